import type { FoodHabit } from '@platewright/core/foods/ranking.ts';
import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import type { TypedItem } from '@platewright/core/foods/typed-line/parse.ts';
import { type HabitualLarder, larderWith, readLine } from '@platewright/core/foods/typed-line/read-line.ts';
import type { Food } from '@platewright/core/records/kinds.ts';
import type { LarderView } from '@platewright/core/views/larder-types.ts';
import { useMemo } from 'preact/hooks';

export type ReadItem = TypedItem<Food>;
type Larder = HabitualLarder<Food>;

const NO_HABITS: readonly FoodHabit[] = [];

interface TypedLarderOptions {
  /** Of the meal that the line is for; none until they are read. */
  habits: readonly FoodHabit[] | undefined;
  /** Hidden foods that count all the same, by id. */
  kept?: readonly string[] | undefined;
}

/** The larder as the typed line reads against it; hidden foods only where they are `kept`. */
export function useTypedLarder(
  larder: LarderView | null,
  { habits = NO_HABITS, kept = [] }: TypedLarderOptions,
): Larder {
  const index = useMemo(() => {
    const foods = larder?.foods.map(({ food }) =>
      kept.includes(food.id) ? { ...food, hidden: false } : food,
    );
    return indexFoods(foods ?? []);
  }, [larder, kept.join()]);
  return useMemo(() => larderWith(index, habits), [index, habits]);
}

/** What a typed line says, item by item. */
export function useReading(line: string, larder: Larder): ReadItem[] {
  return useMemo(() => readLine(line, larder), [line, larder]);
}
