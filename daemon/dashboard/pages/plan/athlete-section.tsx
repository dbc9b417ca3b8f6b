import { isOwner } from '@platewright/core/protocol/rights.ts';
import { formatHeight, lengthUnit } from '@platewright/core/units/length.ts';
import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import { useState } from 'preact/hooks';
import { hrefOf } from '../../router.ts';
import { Writing } from '../../shell/writing.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { AthleteEditor } from './athlete-editor.tsx';

/** The set-up in one line, the form to change it, and for an owner the way to one more athlete. */
export function AthleteSection({ plan }: { plan: PlanView }) {
  const { session } = useAthlete();
  const [editing, setEditing] = useState(false);
  if (editing) return <AthleteEditor plan={plan} close={() => setEditing(false)} />;
  const { athlete } = plan;
  const facts = [
    athlete.name,
    athlete.sex,
    `born ${athlete.birthYear}`,
    formatHeight(athlete.heightCm, lengthUnit(athlete.massUnit)),
    `${formatBodyMass(athlete.startMassKg, athlete.massUnit)} at set-up, ${formatBodyMass(plan.session.bodyMassKg, athlete.massUnit)} in force`,
    `${athlete.meals} meals from ${athlete.wake} to ${athlete.sleep}`,
    `training at ${athlete.trainingTime}`,
    athlete.timeZone,
  ];
  return (
    <div class="stack">
      <p>{facts.join('; ')}.</p>
      <Writing>
        <div class="buttons">
          <button type="button" class="button" onClick={() => setEditing(true)}>
            Change the set-up
          </button>
          {isOwner(session.rights) && (
            <a class="button" href={hrefOf('set-up')}>
              Set up another athlete
            </a>
          )}
        </div>
      </Writing>
    </div>
  );
}
