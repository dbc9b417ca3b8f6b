import type { WeeklyCall } from '@platewright/core/call/output.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import { hrefOf } from '../../router.ts';
import { Empty } from '../../shell/empty.tsx';
import { Section } from '../../shell/page.tsx';
import { Writing } from '../../shell/writing.tsx';
import { contestWords } from '../../targets/contest-words.ts';
import { CallCautions } from './call-cautions.tsx';
import { CallFacts } from './call-facts.tsx';
import { Decide } from './decide.tsx';
import { Evidence } from './evidence.tsx';
import { History } from './history.tsx';
import { NextLevers } from './next-levers.tsx';
import { WeekDays } from './week-days.tsx';
import { WhatIf } from './what-if.tsx';

/** The call, the days it rests on, and the calls before it. */
export function WholeWeek({ week }: { week: WeekView }) {
  const { call, days } = week;
  return (
    <>
      {call?.pace ? <Call week={week} call={call} /> : <NoCall week={week} />}
      {days.some(({ weightKg, intake }) => weightKg !== null || intake !== null) && (
        <Section title="The last 28 days">
          <WeekDays week={week} />
        </Section>
      )}
      {week.earlierCalls.length > 0 && (
        <Section title="Earlier calls">
          <History calls={week.earlierCalls} />
        </Section>
      )}
    </>
  );
}

function Call({ week, call }: { week: WeekView; call: WeeklyCall }) {
  const enough = call.verdict !== 'not-enough';
  return (
    <>
      <CallCautions stated={week.cautions} cautions={call.cautions} />
      <p class="call-words">
        {call.summary[0]} {call.summary[1]}
      </p>
      <Decide key={week.date} week={week} call={call} />
      <NextLevers levers={call.nextLevers} />
      {enough && <CallFacts call={call} units={week.units} />}
      {week.contest && <p class="to-contest soft">{contestWords(week.contest, week.units)}</p>}
      {enough && call.forecast && (
        <Section title="The next four weeks">
          <WhatIf key={week.date} week={week} call={call} forecast={call.forecast} />
        </Section>
      )}
      <Section title="Evidence">
        <Evidence call={call} />
      </Section>
    </>
  );
}

/** Before there is anything to go on: what the page will show, and what it needs. */
function NoCall({ week }: { week: WeekView }) {
  const needs = week.noCall ?? week.call?.wouldChange.map(({ text }) => text).join(' ');
  // What stands against any call at all is put right in the plan.
  const [page, words] = week.noCall ? (['plan', 'Open the plan'] as const) : (['body', 'Weigh in'] as const);
  return (
    <Empty
      shows="Once a week: whether to move the carbohydrate mark, why in two sentences, and what body mass should do in the four weeks after."
      needs={needs || 'It needs weigh-ins, and a log of what was eaten.'}
    >
      <Writing>
        <a class="button first" href={hrefOf(page)}>
          {words}
        </a>
      </Writing>
    </Empty>
  );
}
