import type { FieldsOf, Food } from '../records/kinds.ts';
import type { LoggedItem } from './typed-line/format.ts';

/**
 * Entries of foods at a meal of a date, each with a copy of its food's nutrients as they are now. `at`, ms since 1970, is
 * when they are logged; they are a millisecond apart, so that they stay in the order in which they were typed.
 */
export function entriesOf(
  items: readonly LoggedItem<Food>[],
  { date, meal, at }: Pick<FieldsOf<'entry'>, 'date' | 'meal' | 'at'>,
): FieldsOf<'entry'>[] {
  return items.map(({ food, grams, amount }, i) => ({
    ...{ date, meal, food: food.id, name: food.name, grams, per100: food.per100, at: at + i },
    ...(amount !== null && { amount }),
  }));
}
