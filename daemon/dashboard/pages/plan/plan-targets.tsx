import { unitsOf } from '@platewright/core/units/reader.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import { Section } from '../../shell/page.tsx';
import { PlannedMeals } from '../../targets/planned-meals.tsx';
import { TargetsTable } from '../../targets/targets-table.tsx';
import { Cautions, GaveWay } from '../../targets/warnings.tsx';

/** What a day asks for, with reasons, and the meals of both kinds of day side by side. */
export function PlanTargets({ plan }: { plan: PlanView }) {
  const { session, recovery, athlete } = plan;
  const units = unitsOf(athlete);
  return (
    <>
      <Section title="Targets">
        <Cautions cautions={session.cautions} />
        <TargetsTable targets={session} units={units} />
        <GaveWay sentences={session.gaveWay} />
      </Section>
      <div class="two-columns even">
        <Section title="Meals of a session day">
          <PlannedMeals meals={session.meals} reasons={session.reasons} caption="Meals of a session day" />
        </Section>
        <Section title="Meals of a recovery day">
          <PlannedMeals meals={recovery.meals} reasons={recovery.reasons} caption="Meals of a recovery day" />
        </Section>
      </div>
    </>
  );
}
