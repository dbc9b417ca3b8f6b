import { readView } from '../../api/views.ts';
import { Page } from '../../shell/page.tsx';
import { Shown } from '../../shell/shown.tsx';
import { Writing } from '../../shell/writing.tsx';
import { useAthlete } from '../../state/athlete.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { Cautions, GaveWay } from '../../targets/warnings.tsx';
import { DateTurn } from './date-turn.tsx';
import { DayBeams } from './day-beams.tsx';
import { DayComplete } from './day-complete.tsx';
import { DaySums } from './day-sums.tsx';
import { LogLine } from './log-line.tsx';
import { Timeline } from './timeline.tsx';

/** One date: beams, meals as a time line, what is left for each; `date` is empty for today. */
export function TodayPage({ date }: { date: string }) {
  const { athlete } = useAthlete();
  const loaded = useLoaded(`day ${athlete} ${date}`, () => readView('day', athlete, date));
  const day = loaded.value;
  return (
    <Page
      title={date === '' ? 'Today' : 'Day'}
      lead={day && `${day.kindOfDay === 'session' ? 'Session day' : 'Recovery day'}, ${day.phase}`}
      aside={day && <DateTurn date={day.date} isToday={date === ''} />}
    >
      <Shown loaded={loaded}>
        {(view) => (
          <div class="day">
            <div class="day-main">
              <Cautions cautions={view.cautions} />
              <DayBeams day={view} />
              <LogLine key={view.date} day={view} />
              <Timeline day={view} />
            </div>
            <aside class="day-margin" aria-label="Sums of the day">
              <DaySums day={view} />
              <Writing>
                <DayComplete day={view} />
              </Writing>
              <GaveWay sentences={view.targets.gaveWay} />
            </aside>
          </div>
        )}
      </Shown>
    </Page>
  );
}
