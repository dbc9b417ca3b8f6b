import { Figures } from '@platewright/core/ui/figures.tsx';
import { gramsFigure } from '@platewright/core/ui/number.ts';
import type { LarderView, StandingMealView } from '@platewright/core/views/larder-types.ts';
import { useState } from 'preact/hooks';
import { removal } from '../../api/edits.ts';
import { Empty } from '../../shell/empty.tsx';
import { useNotice } from '../../state/notice.tsx';
import { StandingMealForm } from './standing-meal-form.tsx';

/** Saved meals, each logged whole in one step. */
export function StandingMeals({ larder }: { larder: LarderView }) {
  const [editing, setEditing] = useState<StandingMealView | 'new' | null>(null);
  const { act } = useNotice();
  const { athlete, standingMeals, units } = larder;
  if (editing !== null) {
    const meal = editing === 'new' ? null : editing;
    return <StandingMealForm larder={larder} meal={meal} close={() => setEditing(null)} />;
  }
  const add = (
    <button type="button" class="button" onClick={() => setEditing('new')}>
      Add a standing meal
    </button>
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
                  ({ name, grams }) => `${gramsFigure(grams)} g ${name ?? 'a food no longer in the larder'}`,
                )
                .join('; ')}
            </p>
            <span class="buttons">
              <button type="button" class="link small" onClick={() => setEditing(meal)}>
                Edit<span class="unseen"> {meal.name}</span>
              </button>
              <button
                type="button"
                class="link small"
                onClick={() =>
                  void act([removal('standing-meal', athlete, meal.id, true)], `Removed ${meal.name}.`, [
                    removal('standing-meal', athlete, meal.id, false),
                  ])
                }
              >
                Remove<span class="unseen"> {meal.name}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
      <div>{add}</div>
    </div>
  );
}
