import { loggedWords } from '@platewright/core/ui/logged-words.ts';
import type { LarderView, StandingMealView } from '@platewright/core/views/larder-types.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import { edit, newId, removal } from '../../api/edits.ts';
import { useNotice } from '../../state/notice.tsx';

/** The standing meals, each logged whole with one press. */
export function StandingLog({ larder, day, meal }: { larder: LarderView; day: DayView; meal: number }) {
  const { act, tell } = useNotice();
  const foods = new Map(larder.foods.map(({ food }) => [food.id, food]));
  const { athlete, date } = day;
  const log = (standing: StandingMealView) => {
    const items = standing.items.filter(({ grams }) => grams > 0);
    const now = Date.now();
    const entries = items.flatMap(({ food: id, grams }, n) => {
      const food = foods.get(id);
      if (!food) return [];
      // One by one, so that they stay in their order.
      const fields = { date, meal, food: id, name: food.name, grams, per100: food.per100, at: now + n };
      return [{ id: newId(), fields }];
    });
    if (entries.length === 0) {
      tell(`Nothing of ${standing.name} is in the larder any more.`);
      return;
    }
    void act(
      entries.map((entry) => edit('entry', athlete, entry.id, entry.fields)),
      loggedWords(standing.name, meal, items.length - entries.length),
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
