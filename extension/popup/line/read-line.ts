import { formatItem, type LoggedItem } from '@platewright/core/foods/typed-line/format.ts';
import type { TypedItem } from '@platewright/core/foods/typed-line/parse.ts';
import type { HabitualLarder } from '@platewright/core/foods/typed-line/read-line.ts';
import type { LarderFood } from '../../replica/larder.ts';

export type FoodLarder = HabitualLarder<LarderFood>;
type Item = TypedItem<LarderFood>;

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
