import type { LarderView, StandingMealView } from '@platewright/core/views/larder-types.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import { edit, newId, removal } from '../../api/edits.ts';
import { useNotice } from '../../state/notice.tsx';

/** The standing meals, each logged whole with one press. */
export function StandingLog({ larder, day, meal }: { larder: LarderView; day: DayView; meal: number }) {
  const { act } = useNotice();
  const foods = new Map(larder.foods.map(({ food }) => [food.id, food]));
  const { athlete, date } = day;
  const log = (standing: StandingMealView) => {
    const entries = standing.items.flatMap(({ food: id, grams }) => {
      const food = foods.get(id);
      if (!food || grams <= 0) return [];
      const fields = { date, meal, food: id, name: food.name, grams, per100: food.per100, at: Date.now() };
      return [{ id: newId(), fields }];
    });
    void act(
      entries.map((entry) => edit('entry', athlete, entry.id, entry.fields)),
      `Logged ${standing.name} to meal ${meal}.`,
      entries.map((entry) => removal('entry', athlete, entry.id, true)),
    );
  };
  return (
    <div class="buttons">
      <span class="soft small">Standing meals:</span>
      {larder.standingMeals.map((standing) => (
        <button key={standing.id} type="button" class="button small" onClick={() => log(standing)}>
          {standing.name}
        </button>
      ))}
    </div>
  );
}
