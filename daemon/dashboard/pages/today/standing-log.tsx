import { loggedWords } from '@platewright/core/ui/logged-words.ts';
import type { LarderView, StandingMealView } from '@platewright/core/views/larder-types.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import { newId } from '../../api/edits.ts';
import { useNotice } from '../../state/notice.tsx';
import { logEdits } from './log-edits.ts';

/** The standing meals, each logged whole with one press. */
export function StandingLog({ larder, day, meal }: { larder: LarderView; day: DayView; meal: number }) {
  const { act, tell } = useNotice();
  const foods = new Map(larder.foods.map(({ food }) => [food.id, food]));
  const log = (standing: StandingMealView) => {
    const items = standing.items.filter(({ grams }) => grams > 0);
    const known = items.flatMap(({ food: id, grams }) => {
      const food = foods.get(id);
      return food ? [{ food, grams, amount: null }] : [];
    });
    if (known.length === 0) {
      tell(`Nothing of ${standing.name} is in the larder any more.`);
      return;
    }
    const { edits, back } = logEdits(known, day, meal, (entries) =>
      entries.map((fields) => ({ id: newId(), fields })),
    );
    void act(edits, loggedWords(standing.name, meal, items.length - known.length), back);
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
