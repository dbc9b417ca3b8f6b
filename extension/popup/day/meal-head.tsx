import { Figures } from '@platewright/core/ui/figures.tsx';
import type { DayView } from '@platewright/core/views/types.ts';

interface MealHeadProps {
  day: DayView | null;
  meal: number;
  choose: (meal: number) => void;
}

/** The meal that the typed line logs to: its number, time and role, and what is left for it. */
export function MealHead({ day, meal, choose }: MealHeadProps) {
  const view = day?.meals[meal - 1];
  if (day === null || view === undefined) return <div class="meal-now" />;
  return (
    <div class="meal-now">
      <h2 class="meal-now-name">
        <button
          type="button"
          class="step"
          aria-label="The meal before"
          disabled={meal === 1}
          onClick={() => choose(meal - 1)}
        >
          ‹
        </button>
        <span>
          Meal {meal} <span class="soft">{view.time}</span>
        </span>
        <button
          type="button"
          class="step"
          aria-label="The meal after"
          disabled={meal === day.meals.length}
          onClick={() => choose(meal + 1)}
        >
          ›
        </button>
        {view.role !== 'meal' && <span class="soft small">{view.role}</span>}
      </h2>
      <p class="meal-now-left aim">
        <span>left</span>
        <Figures {...view.left} energyUnit={day.units.energy} />
      </p>
    </div>
  );
}
