import { addDays } from '@platewright/core/season/dates.ts';
import { formatLongDay } from '@platewright/core/ui/format-date.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import { readView } from '../../api/views.ts';
import { hrefOf } from '../../router.ts';
import { Empty } from '../../shell/empty.tsx';
import { Page, Section } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { CallCautions } from './call-cautions.tsx';
import { CallFacts } from './call-facts.tsx';
import { Decide } from './decide.tsx';
import { Evidence } from './evidence.tsx';
import { History } from './history.tsx';
import { NextLevers } from './next-levers.tsx';
import { WeekDays } from './week-days.tsx';
import { WhatIf } from './what-if.tsx';

/** The weekly call with its evidence, and the decision on it; `date` is empty for today. */
export function WeekPage({ date }: { date: string }) {
  const { athlete } = useAthlete();
  const loaded = useLoaded(`week ${athlete} ${date}`, () => readView('week', athlete, date));
  const week = loaded.value;
  return (
    <Page
      title="Week"
      lead={week && `Weekly call of ${formatLongDay(week.date)}${due(week)}`}
      aside={
        week && (
          <nav class="date-turn" aria-label="Week">
            <a class="button small" href={hrefOf('week', addDays(week.date, -7))}>
              ‹ Week before
            </a>
            {date !== '' && (
              <a class="button small" href={hrefOf('week')}>
                Today
              </a>
            )}
          </nav>
        )
      }
    >
      <Shown loaded={loaded}>{(view) => <Whole week={view} />}</Shown>
    </Page>
  );
}

function due({ decision, dueOn, date }: WeekView): string {
  if (decision || dueOn <= date) return '';
  return `; the next one is due on ${formatLongDay(dueOn)}`;
}

function Whole({ week }: { week: WeekView }) {
  const { call } = week;
  return (
    <>
      {call ? (
        <>
          <CallCautions cautions={call.cautions} />
          <p class="call-words">
            {call.summary[0]} {call.summary[1]}
          </p>
          <Decide key={week.date} week={week} call={call} />
          <NextLevers levers={call.nextLevers} />
          <CallFacts call={call} units={week.units} />
          {call.forecast && (
            <Section title="The next four weeks">
              <WhatIf week={week} call={call} forecast={call.forecast} />
            </Section>
          )}
          <Section title="Evidence">
            <Evidence call={call} />
          </Section>
        </>
      ) : (
        <Empty
          shows="Once a week: whether to move the carbohydrate mark, why in two sentences, and what body mass should then do."
          needs={week.noCall ?? 'It needs weigh-ins and a log of what was eaten.'}
        >
          <a class="button first" href={hrefOf('body')}>
            Weigh in
          </a>
        </Empty>
      )}
      <Section title="The last 28 days">
        <WeekDays week={week} />
      </Section>
      <Section title="Earlier calls">
        <History calls={week.earlierCalls} />
      </Section>
    </>
  );
}
