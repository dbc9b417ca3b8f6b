import { openOptions } from '../../platform/open-options.ts';
import type { DayState } from '../state/read-popup.ts';
import { DateHead, stepFrom } from './date-head.tsx';
import { DayBeams } from './day-beams.tsx';
import { Eaten } from './eaten.tsx';
import { Foot } from './foot.tsx';
import { usePageKeys } from './use-page-keys.ts';

interface LookScreenProps {
  state: DayState;
  show: (date: string | null) => void;
}

/** A date where this browser may look only: all that `DayScreen` shows of it, without a way to change it. */
export function LookScreen({ state, show }: LookScreenProps) {
  const { day } = state;
  usePageKeys({ stepDate: (step) => show(stepFrom(state, step)) });
  return (
    <>
      <DateHead state={state} show={show} />
      <main class="day">
        <DayBeams day={day} />
        <p class="look-only">
          This device may look, not write. To log here, unpair it and pair it again with a code that lets it
          write.{' '}
          <button type="button" class="link" onClick={openOptions}>
            Pairing
          </button>
        </p>
        <div class="below">
          {day.meals.every(({ entries }) => entries.length === 0) && (
            <p class="soft">Nothing is logged on this date yet.</p>
          )}
          <Eaten day={day} meal={null} actions={null} />
        </div>
      </main>
      <Foot state={state} />
    </>
  );
}
