import { type TapeSite, tapeSiteSchema } from '@platewright/core/records/body.ts';
import { formatTape, lengthUnit, parseLength } from '@platewright/core/units/length.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { Field } from '../../forms/field.tsx';
import { Select } from '../../forms/select.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';

const sites = tapeSiteSchema.options.map((value) => ({ value, label: value }));

/** One reading of the tape. */
export function TapeForm({ body }: { body: BodyView }) {
  const { athlete, units } = body;
  const unit = lengthUnit(units.mass);
  const { tell } = useNotice();
  const { busy, problem, run, idOf } = useSubmit();
  const [site, setSite] = useState<TapeSite>('waist');
  const [typed, setTyped] = useState('');
  const [date, setDate] = useState(body.date);
  const cm = parseLength(typed, unit);
  const right = cm !== undefined && cm >= 10 && cm <= 250;

  const save = async () => {
    if (!right || !date) return;
    const id = idOf();
    if (!(await run(() => sendEdits([edit('tape', athlete, id, { date, site, cm })])))) return;
    tell(`Taped ${site} at ${formatTape(cm, unit)}.`, [removal('tape', athlete, id, true)]);
    setTyped('');
  };

  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <Select label="Site" value={site} options={sites} onChoice={setSite} />
      <Field
        label="Circumference"
        value={typed}
        onText={setTyped}
        unit={unit}
        inputMode="decimal"
        autocomplete="off"
        wrong={
          typed && !right
            ? `Type a length from ${formatTape(10, unit)} to ${formatTape(250, unit)}.`
            : undefined
        }
      />
      <Field label="Date" type="date" value={date} max={body.date} onText={setDate} />
      <div class="field-button">
        <button type="submit" class="button" disabled={busy || !right}>
          Record
        </button>
      </div>
      {problem && <ProblemNote problem={problem} />}
    </form>
  );
}
