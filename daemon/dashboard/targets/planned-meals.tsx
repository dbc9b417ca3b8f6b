import type { PlannedMeal, Reason } from '@platewright/core/targets/types.ts';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import { Ledger } from '../shell/ledger.tsx';

interface PlannedMealsProps {
  meals: readonly PlannedMeal[];
  reasons: readonly Reason[];
  caption: string;
}

/** The day's meals as planned: time, number, role and grams. */
export function PlannedMeals({ meals, reasons, caption }: PlannedMealsProps) {
  return (
    <>
      <Ledger
        caption={caption}
        rows={meals}
        keyOf={({ meal }) => meal}
        columns={[
          { head: 'Time', cell: ({ time }) => time },
          {
            head: 'Meal',
            cell: ({ meal, role }) => (
              <>
                {meal}
                {role !== 'meal' && <span class="soft"> {role}</span>}
              </>
            ),
          },
          { head: 'Protein', class: 'number', cell: ({ proteinG }) => gramsFigure(proteinG) },
          {
            head: 'Carb.',
            class: 'number',
            cell: ({ carbohydrateG, quickG }) => (
              <>
                {gramsFigure(carbohydrateG)}
                {quickG > 0 && <span class="soft small block">quick {gramsFigure(quickG)}</span>}
              </>
            ),
          },
          { head: 'Fat', class: 'number', cell: ({ fatG }) => gramsFigure(fatG) },
        ]}
      />
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
