import { MealRow } from '@platewright/core/ui/meal-row.tsx';
import type { DayView } from '@platewright/core/views/types.ts';
import { DayEntry } from './day-entry.tsx';

/** The meals of the day from morning to night, each with its entries. */
export function Timeline({ day }: { day: DayView }) {
  const { energy } = day.units;
  return (
    <section class="meals">
      <h2 class="unseen">Meals</h2>
      <div class="meal-columns" aria-hidden="true">
        <span class="entry-name">Eaten</span>
        <span class="entry-grams">Amount</span>
        <span class="figures">
          <span>Protein</span>
          <span>Carb.</span>
          <span>Fat</span>
          <span>{energy}</span>
        </span>
        <span />
      </div>
      <ol>
        {day.meals.map((meal) => (
          <MealRow key={meal.meal} meal={meal} next={meal.meal === day.nextMeal} energyUnit={energy}>
            {meal.entries.map((entry) => (
              <DayEntry key={entry.id} entry={entry} meal={meal.meal} day={day} />
            ))}
          </MealRow>
        ))}
      </ol>
    </section>
  );
}
