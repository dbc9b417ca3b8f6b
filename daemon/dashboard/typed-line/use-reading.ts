import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { parseLine, type TypedItem } from '@platewright/core/foods/typed-line/parse.ts';
import type { Food } from '@platewright/core/records/kinds.ts';
import type { LarderView } from '@platewright/core/views/larder-types.ts';
import { useMemo } from 'preact/hooks';

export type ReadItem = TypedItem<Food>;
type Larder = Parameters<typeof parseLine<Food>>[1];

/** The larder as the typed line reads against it; hidden foods only where they are `kept`, by id. */
export function useTypedLarder(larder: LarderView | null, kept: readonly string[] = []): Larder {
  return useMemo(() => {
    const foods = larder?.foods.map(({ food }) =>
      kept.includes(food.id) ? { ...food, hidden: false } : food,
    );
    return { index: indexFoods(foods ?? []) };
  }, [larder, kept.join()]);
}

/** What a typed line says, item by item. */
export function useReading(line: string, larder: Larder): ReadItem[] {
  return useMemo(() => parseLine(line, larder), [line, larder]);
}

/** The items that can be logged as they are. */
export function ready(items: readonly ReadItem[]): Extract<ReadItem, { status: 'ok' }>[] {
  return items.filter((item) => item.status === 'ok');
}

/** What is left of a line once the items that could be read are taken out. */
export function unread(items: readonly ReadItem[]): string {
  return items
    .filter((item) => item.status !== 'ok')
    .map((item) => item.text)
    .join(', ');
}
