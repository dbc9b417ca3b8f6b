import { ChartKey } from '@platewright/core/ui/chart-key.tsx';
import type { LiftsView, LiftView } from '@platewright/core/views/lifts-types.ts';
import { useState } from 'preact/hooks';
import { readView } from '../../api/views.ts';
import { Empty } from '../../shell/empty.tsx';
import { Page, Section } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { Writing } from '../../shell/writing.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { hasChart, LiftCard } from './lift-card.tsx';
import { LiftForm } from './lift-form.tsx';
import { SetForm } from './set-form.tsx';

/** The lifts that are tracked: their sets, the rep max they tell, and the next mark. */
export function LiftsPage() {
  const { athlete } = useAthlete();
  const loaded = useLoaded(`lifts ${athlete}`, () => readView('lifts', athlete));
  return (
    <Page
      title="Lifts"
      lead="Key lifts tell muscle from fat: the weekly call slows a loss when they fall while the waist stands."
    >
      <Shown loaded={loaded}>{(view) => <Lifts view={view} />}</Shown>
    </Page>
  );
}

function Lifts({ view }: { view: LiftsView }) {
  const [adding, setAdding] = useState(false);
  const add = adding ? (
    <LiftForm view={view} lift={null} close={() => setAdding(false)} />
  ) : (
    <Writing>
      <button type="button" class="button" onClick={() => setAdding(true)}>
        Add a lift
      </button>
    </Writing>
  );
  if (view.lifts.length === 0) return adding ? add : <Nothing add={() => setAdding(true)} />;
  const [key, other] = [view.lifts.filter((lift) => lift.key), view.lifts.filter((lift) => !lift.key)];
  return (
    <>
      <Writing>
        <Section title="Record a set">
          <SetForm view={view} />
          <p class="soft small">
            The rep max is told from sets of up to ten repetitions with none left in reserve. A set to failure
            needs a spotter or safety bars.
          </p>
        </Section>
      </Writing>
      {key.length > 0 && (
        <Section title="Key lifts">
          <LiftList lifts={key} view={view} />
          {key.some(hasChart) && (
            <ChartKey
              signs={[
                { sign: 'mark', means: 'rep max told from the best set of a date' },
                { sign: 'line', means: 'trend of 12 weeks and the 90 % interval of its slope' },
              ]}
            />
          )}
        </Section>
      )}
      {other.length > 0 && (
        <Section title={key.length > 0 ? 'Other lifts' : 'Lifts'}>
          <LiftList lifts={other} view={view} />
        </Section>
      )}
      {add}
    </>
  );
}

function LiftList({ lifts, view }: { lifts: readonly LiftView[]; view: LiftsView }) {
  const from = lifts.map(({ points }) => points[0]?.date ?? view.date).sort()[0] ?? view.date;
  return (
    <ul class="lifts">
      {lifts.map((lift) => (
        <LiftCard key={lift.id} lift={lift} view={view} from={from} />
      ))}
    </ul>
  );
}

function Nothing({ add }: { add: () => void }) {
  return (
    <Empty
      shows="The lifts you want to move: the rep max each one tells, with its error, where it is heading in % a month, and the next mark to beat."
      needs="It needs the name of a lift and a set now and then: load and repetitions. About ten key lifts are enough; a trend shows after four sessions."
    >
      <Writing>
        <button type="button" class="button first" onClick={add}>
          Add the first lift
        </button>
      </Writing>
    </Empty>
  );
}
