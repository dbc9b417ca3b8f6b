import type { ShiftCause } from '@platewright/core/records/body.ts';
import { formatDay, formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { Choice } from '../../forms/choice.tsx';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { Remove } from '../../shell/remove.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';

const words: Record<ShiftCause, { label: string; told: string }> = {
  'another scale': { label: 'Another scale', told: 'another scale' },
  creatine: { label: 'Creatine begun or stopped', told: 'creatine begun or stopped' },
};

const options = (['another scale', 'creatine'] as const).map((value) => ({
  value,
  label: words[value].label,
}));

/** From which date on the scale shows something else without any tissue: the call would take it for pace. */
export function ScaleShifts({ body }: { body: BodyView }) {
  const { athlete, scaleShifts } = body;
  const { tell } = useNotice();
  const submit = useSubmit();
  const [date, setDate] = useState(body.date);
  const [cause, setCause] = useState<ShiftCause | ''>('');
  const known = scaleShifts.some((shift) => shift.date === date && shift.cause === cause);
  const ready = date !== '' && cause !== '' && !known;

  const save = async () => {
    if (!ready) return;
    const id = `shift-${cause.replace(' ', '-')}-${date}`;
    const fields = { date, cause, removed: false };
    if (!(await submit.run(() => sendEdits([edit('scale-shift', athlete, id, fields)])))) return;
    setCause('');
    const back = [removal('scale-shift', athlete, id, true)];
    tell(`Recorded ${words[cause].told} from ${formatDay(date)} on.`, back);
  };

  return (
    <>
      <RecordForm submit={submit} save={save} ready={ready} button="Record">
        <Choice legend="What is new" value={cause} options={options} onChoice={setCause} />
        <Field
          label="From this date on"
          type="date"
          value={date}
          max={body.date}
          onText={setDate}
          hint={known ? 'This is recorded.' : undefined}
        />
      </RecordForm>
      {scaleShifts.length === 0 && (
        <p class="soft">
          Both move what the scale shows, and neither is tissue. Recorded here, the weekly call doesn’t take
          it for pace.
        </p>
      )}
      <ul class="rows">
        {scaleShifts.map((shift) => (
          <li key={shift.id} class="phase">
            <span>
              {formatDayOfYear(shift.date)}
              <span class="soft small"> {words[shift.cause].told}</span>
            </span>
            <Remove
              kind="scale-shift"
              id={shift.id}
              what={`${words[shift.cause].told} of ${formatDay(shift.date)}`}
            />
          </li>
        ))}
      </ul>
    </>
  );
}
