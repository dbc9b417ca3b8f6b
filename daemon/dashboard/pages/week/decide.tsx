import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import { useState } from 'preact/hooks';
import { removal } from '../../api/edits.ts';
import { decide } from '../../api/views.ts';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { Writing } from '../../shell/writing.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { Decided } from './decided.tsx';
import { MarkStep } from './mark-step.tsx';
import { OtherMark } from './other-mark.tsx';
import { PlanAfter } from './plan-after.tsx';

/** The decision on a call: accept it, set another mark, or decline. Each is recorded, and can be undone. */
export function Decide({ week, call }: { week: WeekView; call: WeeklyCall }) {
  const { athlete, date } = week;
  const [other, setOther] = useState(false);
  const [made, setMade] = useState(false);
  const { busy, problem, run } = useSubmit({ typed: other });
  const { tell } = useNotice();

  const send = async (decision: 'accepted' | 'changed' | 'declined', markG: number) => {
    const body = { athlete, date, decision, ...(decision === 'changed' && { markG }) };
    if (!(await run(() => decide(body)))) return;
    setMade(true);
    setOther(false);
    const mass = week.planAfter && formatBodyMass(week.planAfter.bodyMassKg, week.units.mass);
    const rest = mass ? ` Protein and fat now go by ${mass}, the bodyweight line.` : '';
    tell(`The mark is ${gramsFigure(markG)} g of carbohydrate a day.${rest}`, [
      removal('weekly-call', athlete, `call-${date}`, true),
    ]);
  };

  if (week.decision) return <Decided decision={week.decision} athlete={athlete} justMade={made} />;
  const moves = call.verdict === 'up' || call.verdict === 'down';
  return (
    <div class="decide">
      <MarkStep call={call} band={week.carbohydrateBand} />
      {week.planAfter && !other && call.verdict !== 'not-enough' && (
        <PlanAfter plan={week.planAfter} units={week.units} />
      )}
      <Writing>
        <div class="buttons">
          {call.verdict !== 'not-enough' && (
            <button
              type="button"
              class="button first"
              disabled={busy}
              onClick={() => void send('accepted', call.carbohydrateG)}
            >
              {moves ? 'Accept' : 'Stay at'} {gramsFigure(call.carbohydrateG)} g
            </button>
          )}
          <button type="button" class="button" aria-expanded={other} onClick={() => setOther(!other)}>
            Set another mark
          </button>
          {moves && (
            <button
              type="button"
              class="button"
              disabled={busy}
              onClick={() => void send('declined', call.markInForceG)}
            >
              Decline
            </button>
          )}
        </div>
      </Writing>
      {other && (
        <OtherMark week={week} call={call} busy={busy} set={(markG) => void send('changed', markG)} />
      )}
      {problem && <ProblemNote problem={problem} />}
    </div>
  );
}
