import { formatItem, type LoggedItem } from '@platewright/core/foods/typed-line/format.ts';
import type { Larder } from '@platewright/core/foods/typed-line/interpret.ts';
import { parseLine, type TypedItem } from '@platewright/core/foods/typed-line/parse.ts';
import type { LarderFood } from '../../replica/larder.ts';

export type FoodLarder = Larder<LarderFood>;
/** The amount of a food that this athlete usually eats now. */
export type Usual = (food: LarderFood) => { grams: number; amount: string | null } | undefined;
type Item = TypedItem<LarderFood>;
/** An item that can be logged. */
export type ReadyItem = Item & { status: 'ok' };

/** Reads a typed line; a food without an amount gets the usual one, where there is one. */
export function readLine(line: string, larder: FoodLarder, usual: Usual): Item[] {
  return parseLine(line, larder).map((item): Item => {
    const amount = item.status === 'needs-amount' ? usual(item.food) : undefined;
    return item.status === 'needs-amount' && amount !== undefined
      ? { text: item.text, start: item.start, end: item.end, status: 'ok', food: item.food, ...amount }
      : item;
  });
}

export function readyItems(items: readonly Item[]): ReadyItem[] {
  return items.filter((item) => item.status === 'ok');
}

/** The line once what can be logged is logged: what could not be read, as it was typed. */
export function lineLeft(items: readonly Item[]): string {
  return items
    .filter((item) => item.status !== 'ok')
    .map((item) => item.text)
    .join(', ');
}

/** The items to mark: what can't be read, but for the one that is still being typed at `caret`. */
export function faultyItems(items: readonly Item[], caret: number | null): Exclude<Item, { status: 'ok' }>[] {
  return items
    .filter((item) => item.status !== 'ok')
    .filter((item) => caret === null || caret < item.start || caret > item.end);
}

/** The line with a suggestion in place of the empty item at its end, ready for the next one. */
export function withSuggestion(line: string, item: LoggedItem<LarderFood>, larder: FoodLarder): string {
  return `${line.trimEnd()}${line.trim() === '' ? '' : ' '}${formatItem(item, larder)}, `.trimStart();
}
