import { formatHeight, lengthUnit } from '@platewright/core/units/length.ts';
import { formatBodyMass } from '@platewright/core/units/mass.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import { useState } from 'preact/hooks';
import { AthleteEditor } from './athlete-editor.tsx';

/** The set-up in one line, and the form to change it. */
export function AthleteSection({ plan }: { plan: PlanView }) {
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
      <div>
        <button type="button" class="button" onClick={() => setEditing(true)}>
          Change the set-up
        </button>
      </div>
    </div>
  );
}
