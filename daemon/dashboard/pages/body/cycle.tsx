import { daysBetween } from '@platewright/core/season/dates.ts';
import { formatDay, formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { Remove } from '../../shell/remove.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';

const rows = 6;

/** First days of cycles: with them the bodyweight line expects the water that comes and goes with a cycle. */
export function Cycle({ body }: { body: BodyView }) {
  const { athlete, cycleStarts } = body;
  const { tell } = useNotice();
  const submit = useSubmit();
  const [date, setDate] = useState(body.date);
  const known = cycleStarts.some((start) => start.date === date);
  const ready = date !== '' && !known;

  const save = async () => {
    if (!ready) return;
    const id = `cycle-${date}`;
    const fields = { date, removed: false };
    if (!(await submit.run(() => sendEdits([edit('cycle-start', athlete, id, fields)])))) return;
    const back = [removal('cycle-start', athlete, id, true)];
    tell(`Recorded ${formatDay(date)} as the first day of a cycle.`, back);
  };

  return (
    <>
      <RecordForm submit={submit} save={save} ready={ready} button="Record">
        <Field
          label="First day of a cycle"
          type="date"
          value={date}
          max={body.date}
          onText={setDate}
          hint={known ? 'This date is recorded.' : undefined}
        />
      </RecordForm>
      {cycleStarts.length === 0 && (
        <p class="soft">
          Water comes and goes with a cycle. With its first days recorded, the bodyweight line and the weekly
          call expect that water instead of taking it for tissue.
        </p>
      )}
      <ul class="rows">
        {cycleStarts.slice(0, rows).map((start, n) => {
          const before = cycleStarts[n + 1];
          return (
            <li key={start.id} class="phase">
              <span>
                {formatDayOfYear(start.date)}
                {before && (
                  <span class="soft small"> {daysBetween(before.date, start.date)} days after the last</span>
                )}
              </span>
              <Remove kind="cycle-start" id={start.id} what={`the cycle from ${formatDay(start.date)}`} />
            </li>
          );
        })}
      </ul>
    </>
  );
}
