import type { FoodHabit } from '../ranking.ts';
import type { FoodIndex } from '../search/food-index.ts';
import type { Edible, Larder } from './interpret.ts';
import { parseLine, type TypedItem } from './parse.ts';

/** The foods to read a line against, and what this athlete eats of them at the meal it is for. */
export interface HabitualLarder<F extends Edible> extends Larder<F> {
  /** By id of the food. */
  usual: ReadonlyMap<string, Pick<FoodHabit, 'grams' | 'amount'>>;
}

/** An item that can be logged. */
export type ReadyItem<F> = TypedItem<F> & { status: 'ok' };

/** A larder with the habits of a meal; without any, nothing is usual. */
export function larderWith<F extends Edible>(
  index: FoodIndex<F>,
  habits: readonly FoodHabit[],
): HabitualLarder<F> {
  return {
    index,
    usage: new Map(habits.map(({ food, usage }) => [food, usage])),
    usual: new Map(habits.map(({ food, grams, amount }) => [food, { grams, amount }])),
  };
}

/**
 * Reads a typed line as one athlete means it, wherever it is typed: habit decides between foods, and a food without an
 * amount gets the usual one, where there is one and none stands alone beside it: `oats, 80 g`.
 */
export function readLine<F extends Edible>(line: string, larder: HabitualLarder<F>): TypedItem<F>[] {
  return parseLine(line, larder).map((item, i, all): TypedItem<F> => {
    if (item.status !== 'needs-amount') return item;
    const amount = larder.usual.get(item.food.id);
    const isApart = [all[i - 1], all[i + 1]].some((beside) => beside?.status === 'needs-food');
    return amount === undefined || isApart
      ? item
      : { text: item.text, start: item.start, end: item.end, status: 'ok', food: item.food, ...amount };
  });
}

/** The items that can be logged as they are. */
export function readyItems<F>(items: readonly TypedItem<F>[]): ReadyItem<F>[] {
  return items.filter((item) => item.status === 'ok');
}

/** The line once what can be logged is logged: what could not be read, as it was typed. */
export function lineLeft(items: readonly TypedItem<unknown>[]): string {
  return items
    .filter((item) => item.status !== 'ok')
    .map((item) => item.text)
    .join(', ');
}
