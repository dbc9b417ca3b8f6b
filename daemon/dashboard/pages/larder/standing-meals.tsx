import { Figures } from '@platewright/core/ui/figures.tsx';
import { weighedFigure } from '@platewright/core/ui/number.ts';
import type { LarderView, StandingMealView } from '@platewright/core/views/larder-types.ts';
import { useState } from 'preact/hooks';
import { readView } from '../../api/views.ts';
import { Empty } from '../../shell/empty.tsx';
import { Remove } from '../../shell/remove.tsx';
import { RowAction } from '../../shell/row-action.tsx';
import { Writing } from '../../shell/writing.tsx';
import { useLoaded } from '../../state/use-view.ts';
import { StandingMealForm } from './standing-meal-form.tsx';

/** Saved meals, each logged whole in one step. */
export function StandingMeals({ larder }: { larder: LarderView }) {
  const [editing, setEditing] = useState<StandingMealView | 'new' | null>(null);
  const { standingMeals, units, athlete } = larder;
  const habits = useLoaded(`habits ${athlete}`, () => readView('habits', athlete)).value?.anyMeal;
  // Without habits a line may mean something else, so the form waits for them.
  if (editing !== null && habits) {
    const meal = editing === 'new' ? null : editing;
    return <StandingMealForm larder={larder} habits={habits} meal={meal} close={() => setEditing(null)} />;
  }
  const add = (
    <Writing>
      <button type="button" class="button" onClick={() => setEditing('new')}>
        Add a standing meal
      </button>
    </Writing>
  );
  if (standingMeals.length === 0) {
    return (
      <Empty
        shows="Meals that you eat again and again, saved once and logged whole in one step."
        needs="It needs a name and a typed line."
      >
        {add}
      </Empty>
    );
  }
  return (
    <div class="stack">
      <ul class="rows">
        {standingMeals.map((meal) => (
          <li key={meal.id} class="standing">
            <div class="standing-head">
              <h3>{meal.name}</h3>
              <Figures {...meal.sums} energyUnit={units.energy} />
            </div>
            <p class="soft small">
              {meal.items
                .map(
                  ({ name, grams }) =>
                    `${weighedFigure(grams)} g ${name ?? 'a food no longer in the larder'}`,
                )
                .join('; ')}
            </p>
            <span class="buttons">
              <RowAction name="Edit" what={meal.name} run={() => setEditing(meal)} />
              <Remove kind="standing-meal" id={meal.id} what={meal.name} />
            </span>
          </li>
        ))}
      </ul>
      <div>{add}</div>
    </div>
  );
}
