import type { PlannedMeal, Reason } from '@platewright/core/targets/types.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';

/** The day's meals as planned: time, number, role and grams. */
export function PlannedMeals({
  meals,
  reasons,
  caption,
}: {
  meals: readonly PlannedMeal[];
  reasons: readonly Reason[];
  caption: string;
}) {
  return (
    <>
      <table class="ledger">
        <caption class="unseen">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Time</th>
            <th scope="col">Meal</th>
            <th scope="col" class="number">
              Protein
            </th>
            <th scope="col" class="number">
              Carb.
            </th>
            <th scope="col" class="number">
              Fat
            </th>
          </tr>
        </thead>
        <tbody>
          {meals.map((meal) => (
            <tr key={meal.meal}>
              <td>{meal.time}</td>
              <th scope="row">
                {meal.meal}
                {meal.role !== 'meal' && <span class="soft"> {meal.role}</span>}
              </th>
              <td class="number">{gramsFigure(meal.proteinG)}</td>
              <td class="number">
                {gramsFigure(meal.carbohydrateG)}
                {meal.quickG > 0 && <span class="soft small block">quick {gramsFigure(meal.quickG)}</span>}
              </td>
              <td class="number">{gramsFigure(meal.fatG)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {reasons
        .filter((reason) => reason.about === 'meals')
        .map((reason) => (
          <p key={reason.text} class="target-reason">
            {reason.text} <span class="soft">[{reason.source}]</span>
          </p>
        ))}
    </>
  );
}
