import { addDays } from '@platewright/core/season/dates.ts';
import { formatLongDay } from '@platewright/core/ui/format-date.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import { readView } from '../../api/views.ts';
import { hrefOf } from '../../router.ts';
import { Page } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { WholeWeek } from './whole-week.tsx';

/** The weekly call with its evidence, and the decision on it; `date` is empty for today. */
export function WeekPage({ date }: { date: string }) {
  const { athlete } = useAthlete();
  const loaded = useLoaded(`week ${athlete} ${date}`, () => readView('week', athlete, date));
  const week = loaded.value;
  return (
    <Page
      title="Week"
      lead={week && `Weekly call of ${formatLongDay(week.date, date !== '')}${due(week)}`}
      aside={week && <WeekTurn date={week.date} isToday={date === ''} />}
    >
      <Shown loaded={loaded}>{(view) => <WholeWeek week={view} />}</Shown>
    </Page>
  );
}

function due({ decision, dueOn, date }: WeekView): string {
  if (decision || dueOn <= date) return '';
  return `; the next one is due on ${formatLongDay(dueOn)}`;
}

function WeekTurn({ date, isToday }: { date: string; isToday: boolean }) {
  return (
    <nav class="date-turn" aria-label="Week">
      <a class="button small" href={hrefOf('week', addDays(date, -7))}>
        ‹ Week before
      </a>
      {!isToday && (
        <a class="button small" href={hrefOf('week')}>
          Today
        </a>
      )}
    </nav>
  );
}
