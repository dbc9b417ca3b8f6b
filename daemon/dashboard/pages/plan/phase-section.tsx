import type { Phase } from '@platewright/core/records/kinds.ts';
import { formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import { paceFigure } from '@platewright/core/ui/number.ts';
import { unitsOf } from '@platewright/core/units/reader.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import { useState } from 'preact/hooks';
import { range } from '../../shell/range.ts';
import { Remove } from '../../shell/remove.tsx';
import { RowAction } from '../../shell/row-action.tsx';
import { Writing } from '../../shell/writing.tsx';
import { contestWords } from '../../targets/contest-words.ts';
import { PhaseForm } from './phase-form.tsx';

/** The phases, oldest first, and the form for the next one or for a change. */
export function PhaseSection({ plan }: { plan: PlanView }) {
  const [editing, setEditing] = useState<Phase | 'new' | null>(null);
  if (editing !== null) {
    const phase = editing === 'new' ? null : editing;
    return <PhaseForm plan={plan} phase={phase} close={() => setEditing(null)} />;
  }
  return (
    <div class="stack">
      {plan.phases.length === 0 ? (
        <p class="soft">No phase yet: until one starts, the aim is to hold.</p>
      ) : (
        <ul class="rows">
          {plan.phases.map((phase) => (
            <PhaseRow key={phase.id} phase={phase} plan={plan} edit={() => setEditing(phase)} />
          ))}
        </ul>
      )}
      <Writing>
        <div>
          <button type="button" class="button" onClick={() => setEditing('new')}>
            Plan a phase
          </button>
        </div>
      </Writing>
    </div>
  );
}

function PhaseRow({ phase, plan, edit }: { phase: Phase; plan: PlanView; edit: () => void }) {
  const inForce = phase.id === plan.phaseInForce;
  const toContest = plan.contest?.phase === phase.id ? plan.contest : null;
  const what = `${phase.aim} from ${formatDayOfYear(phase.from)}`;
  return (
    <li class={inForce ? 'phase now' : 'phase'}>
      <div>
        <b class="capital">{phase.aim}</b> from {formatDayOfYear(phase.from)}
        {inForce && <span class="aim"> in force</span>}
        <p class="soft small">
          aim {paceFigure(phase.pacePercentPerWeek)} % a week, band{' '}
          {range({ low: phase.bandLow, high: phase.bandHigh }, paceFigure)}
          {phase.contestDate && !toContest && `; contest ${formatDayOfYear(phase.contestDate)}`}
          {phase.startMarkG !== undefined && `; starting mark ${phase.startMarkG} g`}
        </p>
        {toContest && <p class="small">{contestWords(toContest, unitsOf(plan.athlete))}</p>}
      </div>
      <span class="buttons">
        <RowAction name="Edit" what={what} run={edit} />
        <Remove kind="phase" id={phase.id} what={what} />
      </span>
    </li>
  );
}
