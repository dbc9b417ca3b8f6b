import { daysBetween } from '@platewright/core/season/dates.ts';
import { formatDay, formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useState } from 'preact/hooks';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { Field } from '../../forms/field.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';

const rows = 6;

/** First days of cycles: with them the bodyweight line expects the water that comes and goes with a cycle. */
export function Cycle({ body }: { body: BodyView }) {
  const { athlete, cycleStarts } = body;
  const { tell, act } = useNotice();
  const { busy, problem, run } = useSubmit();
  const [date, setDate] = useState(body.date);
  const known = cycleStarts.some((start) => start.date === date);

  const save = async () => {
    if (!date || known) return;
    const id = `cycle-${date}`;
    const stored = await run(() => sendEdits([edit('cycle-start', athlete, id, { date, removed: false })]));
    if (stored)
      tell(`Recorded ${formatDay(date)} as the first day of a cycle.`, [
        removal('cycle-start', athlete, id, true),
      ]);
  };

  return (
    <>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <Field
          label="First day of a cycle"
          type="date"
          value={date}
          max={body.date}
          onText={setDate}
          hint={known ? 'This date is recorded.' : undefined}
        />
        <div class="field-button">
          <button type="submit" class="button" disabled={busy || !date || known}>
            Record
          </button>
        </div>
        {problem && <ProblemNote problem={problem} />}
      </form>
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
              <button
                type="button"
                class="link small"
                onClick={() =>
                  void act(
                    [removal('cycle-start', athlete, start.id, true)],
                    `Removed the first day of a cycle, ${formatDay(start.date)}.`,
                    [removal('cycle-start', athlete, start.id, false)],
                  )
                }
              >
                Remove<span class="unseen"> {formatDay(start.date)}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
