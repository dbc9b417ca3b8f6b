import { formatDay, weekdaysInShort } from '@platewright/core/ui/format-date.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';

/** The dates ahead: a session day is filled, and a phase that starts says so. */
export function Calendar({ plan }: { plan: PlanView }) {
  return (
    <ol class="calendar">
      {plan.calendar.map(({ date, weekday, kindOfDay, phase }, index) => (
        <li key={date} class={kindOfDay}>
          <span class="small">{weekdaysInShort[weekday - 1]}</span>
          <span>{formatDay(date)}</span>
          <span class="small">{kindOfDay}</span>
          {phase !== (plan.calendar[index - 1]?.phase ?? phase) && <span class="small">{phase} begins</span>}
        </li>
      ))}
    </ol>
  );
}
