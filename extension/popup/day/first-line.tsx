import type { DayView } from '@platewright/core/views/types.ts';

/** What to do on a day with nothing eaten, before there are habits to offer. */
export function FirstLine({ day }: { day: DayView }) {
  if (day.meals.some(({ entries }) => entries.length > 0)) return null;
  return (
    <p class="soft small">
      Type what you eat, with commas between, and press Enter. <kbd>?</kbd> shows all keys.
    </p>
  );
}
