import { addDays } from '@platewright/core/season/dates.ts';
import { formatWeekday } from '@platewright/core/ui/format-date.ts';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { EntryFields } from './entry-edits.ts';

interface MoveStripProps {
  name: string;
  date: string;
  meal: number;
  meals: number;
  move: (to: EntryFields, done: string) => void;
  close: () => void;
}

/** Where an entry can go: another meal by its digit, the day before or after by the arrows. */
export function MoveStrip({ name, date, meal, meals, move, close }: MoveStripProps) {
  const strip = useRef<HTMLFieldSetElement>(null);
  // Before the paint, so that a digit typed right after `m` is heard; the meal it is at can't take the focus.
  useLayoutEffect(() => strip.current?.querySelector<HTMLButtonElement>('button:enabled')?.focus(), []);
  const toMeal = (to: number) => {
    if (to >= 1 && to <= meals && to !== meal) move({ meal: to }, `Moved ${name} to meal ${to}.`);
  };
  const toDate = (days: number) => {
    const to = addDays(date, days);
    move({ date: to }, `Moved ${name} to ${formatWeekday(to)}.`);
  };

  const onKeyDown = (event: KeyboardEvent) => {
    if (/^[1-8]$/.test(event.key)) toMeal(Number(event.key));
    else if (event.key === 'ArrowLeft') toDate(-1);
    else if (event.key === 'ArrowRight') toDate(1);
    else if (event.key === 'Escape') close();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <fieldset ref={strip} class="move-strip" onKeyDown={onKeyDown}>
      <legend class="unseen">Move {name}</legend>
      <span aria-hidden="true">To meal</span>
      {Array.from({ length: meals }, (_, i) => i + 1).map((to) => (
        <button
          key={to}
          type="button"
          class="button small"
          aria-label={`To meal ${to}`}
          disabled={to === meal}
          onClick={() => toMeal(to)}
        >
          {to}
        </button>
      ))}
      <button type="button" class="button small" aria-label="To the day before" onClick={() => toDate(-1)}>
        ‹ day
      </button>
      <button type="button" class="button small" aria-label="To the day after" onClick={() => toDate(1)}>
        day ›
      </button>
    </fieldset>
  );
}
