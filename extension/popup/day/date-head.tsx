import { addDays } from '@platewright/core/season/dates.ts';
import { formatWeekday } from '@platewright/core/ui/format-date.ts';
import type { DayState } from '../state/read-popup.ts';

/** The date with its neighbours, and what kind of day it is. */
export function DateHead({ state, show }: { state: DayState | null; show: (date: string | null) => void }) {
  if (state === null) return <header class="date-head" />;
  const { day, today, session, athlete } = state;
  const go = (days: 1 | -1) => show(stepFrom(state, days));
  return (
    <header class="date-head">
      <button type="button" class="step" aria-label="The day before" onClick={() => go(-1)}>
        ‹
      </button>
      <h1 class="date">
        {formatWeekday(day.date)}
        {day.date === today && <span class="soft"> today</span>}
      </h1>
      <button type="button" class="step" aria-label="The day after" onClick={() => go(1)}>
        ›
      </button>
      {day.date !== today && (
        <button type="button" class="link small" onClick={() => show(null)}>
          Today
        </button>
      )}
      <p class="date-kind soft small">
        {(session?.athletes.length ?? 0) > 1 && <strong>{athlete.name}</strong>}
        {day.kindOfDay} day, {day.phase}
        {session?.demo && <strong class="demo">Invented season</strong>}
      </p>
    </header>
  );
}

/** The date before or after the one that is shown; null for today. */
export function stepFrom({ day, today }: DayState, days: 1 | -1): string | null {
  const date = addDays(day.date, days);
  return date === today ? null : date;
}
