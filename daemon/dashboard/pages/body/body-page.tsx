import type { BodyView } from '@platewright/core/views/body-types.ts';
import { readView } from '../../api/views.ts';
import { Empty } from '../../shell/empty.tsx';
import { Page, Section } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { Writing } from '../../shell/writing.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { BodyFacts } from './body-facts.tsx';
import { BodyLine } from './body-line.tsx';
import { CalipersForm } from './calipers-form.tsx';
import { CalipersTable } from './calipers-table.tsx';
import { Cycle } from './cycle.tsx';
import { LeanShareTable } from './lean-share-table.tsx';
import { PasteForm } from './paste-form.tsx';
import { Photos } from './photos.tsx';
import { ScaleShifts } from './scale-shifts.tsx';
import { TapeForm } from './tape-form.tsx';
import { TapeTable } from './tape-table.tsx';
import { WeighInForm } from './weigh-in-form.tsx';
import { WeighInTable } from './weigh-in-table.tsx';

/** Weigh-ins and the bodyweight line over them, tape, calipers, how a change splits, and photos. */
export function BodyPage() {
  const { athlete } = useAthlete();
  const loaded = useLoaded(`body ${athlete}`, () => readView('body', athlete));
  return (
    <Page title="Body">
      <Shown loaded={loaded}>
        {(body) => (
          <>
            <Writing>
              <Section title="Weigh in">
                <WeighInForm body={body} />
              </Section>
            </Writing>
            {body.points.length > 0 ? <Line body={body} /> : <Nothing />}
            <div class="two-columns even">
              <div>
                {body.points.length > 0 && (
                  <Section title="Weigh-ins">
                    <WeighInTable body={body} />
                  </Section>
                )}
                <Writing>
                  <Section title="Paste weigh-ins">
                    <PasteForm body={body} />
                  </Section>
                </Writing>
                {body.points.length > 0 && (
                  <Section title="Scale and creatine">
                    <ScaleShifts body={body} />
                  </Section>
                )}
              </div>
              <div>
                {body.points.length > 0 && (
                  <Section title="Lean share">
                    <LeanShareTable body={body} />
                  </Section>
                )}
                <Section title="Tape">
                  <TapeForm body={body} />
                  <TapeTable body={body} />
                </Section>
                <Section title="Calipers">
                  <CalipersForm body={body} />
                  <CalipersTable body={body} />
                </Section>
                {body.person.sex === 'female' && (
                  <Section title="Cycle">
                    <Cycle body={body} />
                  </Section>
                )}
              </div>
            </div>
            <Section title="Photos">
              <Photos body={body} />
            </Section>
          </>
        )}
      </Shown>
    </Page>
  );
}

function Line({ body }: { body: BodyView }) {
  return (
    <>
      <BodyFacts body={body} />
      <Section title="Bodyweight line">
        <BodyLine body={body} />
      </Section>
    </>
  );
}

function Nothing() {
  return (
    <Empty
      shows="The bodyweight line: your weigh-ins as marks, the line over them with a ribbon for what is not known, and the pace band of your phase as a wedge."
      needs="It needs one weigh-in to start, and says a pace after about two weeks of them. Mornings, after the toilet, before food, say the most."
    >
      <Writing>
        <button
          type="button"
          class="button first"
          onClick={() => document.querySelector<HTMLElement>('main form input')?.focus()}
        >
          Type the first weigh-in
        </button>
      </Writing>
    </Empty>
  );
}
