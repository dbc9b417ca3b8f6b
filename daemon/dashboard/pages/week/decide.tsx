import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import { parseDecimal } from '@platewright/core/units/decimal.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import { useState } from 'preact/hooks';
import { removal } from '../../api/edits.ts';
import { decide } from '../../api/views.ts';
import { Field } from '../../forms/field.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { Decided } from './decided.tsx';
import { MarkStep } from './mark-step.tsx';

/** The decision on a call: accept it, set another mark, or decline. Each is recorded, and can be undone. */
export function Decide({ week, call }: { week: WeekView; call: WeeklyCall }) {
  const { athlete, date, decision } = week;
  const [other, setOther] = useState<string | null>(null);
  const { busy, problem, run } = useSubmit();
  const { tell } = useNotice();
  const otherG = parseDecimal(other ?? '');
  const right = otherG !== undefined && otherG > 0 && otherG <= 2000;

  const send = async (choice: 'accepted' | 'changed' | 'declined', markG?: number) => {
    const body = { athlete, date, decision: choice, ...(markG !== undefined && { markG }) };
    if (!(await run(() => decide(body)))) return;
    setOther(null);
    const mark = markG ?? (choice === 'accepted' ? call.carbohydrateG : call.markInForceG);
    tell(`The mark is ${gramsFigure(mark)} g from ${date === week.date ? 'this date' : date} on.`, [
      removal('weekly-call', athlete, `call-${date}`, true),
    ]);
  };

  if (decision) return <Decided decision={decision} athlete={athlete} />;
  const moves = call.verdict === 'up' || call.verdict === 'down';
  return (
    <div class="decide">
      <MarkStep call={call} band={week.carbohydrateBand} />
      <div class="buttons">
        <button type="button" class="button first" disabled={busy} onClick={() => void send('accepted')}>
          {moves
            ? `Accept ${gramsFigure(call.carbohydrateG)} g`
            : `Stay at ${gramsFigure(call.carbohydrateG)} g`}
        </button>
        <button
          type="button"
          class="button"
          aria-expanded={other !== null}
          onClick={() => setOther(other === null ? String(call.carbohydrateG) : null)}
        >
          Set another mark
        </button>
        {moves && (
          <button type="button" class="button" disabled={busy} onClick={() => void send('declined')}>
            Decline
          </button>
        )}
      </div>
      {other !== null && (
        <form
          class="inline-form"
          onSubmit={(event) => {
            event.preventDefault();
            if (right) void send('changed', otherG);
          }}
        >
          <Field
            label="Carbohydrate mark"
            value={other}
            onText={setOther}
            unit="g a day"
            inputMode="numeric"
            wrong={other && !right ? 'Type grams a day, up to 2000.' : undefined}
          />
          <button type="submit" class="button" disabled={busy || !right}>
            Set it
          </button>
        </form>
      )}
      {problem && <ProblemNote problem={problem} />}
    </div>
  );
}
