import { addDays } from '@platewright/core/season/dates.ts';
import { formatLongDay } from '@platewright/core/ui/format-date.ts';
import { hrefOf } from '../../router.ts';

/** The date with its neighbours, and a way to any other. */
export function DateTurn({ date, isToday }: { date: string; isToday: boolean }) {
  return (
    <nav class="date-turn" aria-label="Date">
      <a class="button small" href={hrefOf('today', addDays(date, -1))} aria-label="The day before">
        ‹
      </a>
      <label class="date-pick">
        <span>{formatLongDay(date, !isToday)}</span>
        <input
          type="date"
          aria-label="Go to a date"
          value={date}
          onClick={(event) => event.currentTarget.showPicker()}
          onChange={(event) => {
            if (event.currentTarget.value) location.hash = hrefOf('today', event.currentTarget.value);
          }}
        />
      </label>
      <a class="button small" href={hrefOf('today', addDays(date, 1))} aria-label="The day after">
        ›
      </a>
      {!isToday && (
        <a class="button small" href={hrefOf('today')}>
          Today
        </a>
      )}
    </nav>
  );
}
