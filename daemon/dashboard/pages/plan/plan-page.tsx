import { readView } from '../../api/views.ts';
import { Page, Section } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { AthleteSection } from './athlete-section.tsx';
import { Calendar } from './calendar.tsx';
import { PhaseSection } from './phase-section.tsx';
import { PlanTargets } from './plan-targets.tsx';

/** The phase, what it asks for and why, and the days ahead. */
export function PlanPage() {
  const { athlete } = useAthlete();
  const loaded = useLoaded(`plan ${athlete}`, () => readView('plan', athlete));
  return (
    <Page title="Plan">
      <Shown loaded={loaded}>
        {(plan) => (
          <>
            <Section title="Phases">
              <PhaseSection plan={plan} />
            </Section>
            <Section title="The next 14 days">
              <Calendar plan={plan} />
            </Section>
            <PlanTargets plan={plan} />
            <Section title="Athlete">
              <AthleteSection plan={plan} />
            </Section>
          </>
        )}
      </Shown>
    </Page>
  );
}
