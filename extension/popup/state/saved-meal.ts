import { clockDevice } from '@platewright/core/changes/clock.ts';
import { readRecord } from '@platewright/core/changes/read.ts';
import { loggedWords } from '@platewright/core/ui/logged-words.ts';
import type { Edit } from '../../replica/edit.ts';
import type { RecordRow } from '../../replica/rows.ts';

/** What was done, in words, and the edits that take it back. */
export interface Done {
  text: string;
  undo: readonly Edit[];
}

/** For so long a saved meal can be taken back whole; later each of its entries still can. */
const UNDO_MS = 10 * 60_000;
/** Foods of one line are a millisecond apart; nobody sends two lines within so little. */
const ONE_LINE_MS = 100;

/**
 * The meal that `device` saved last, of entries of one date; null when it was longer ago or is not as it was saved. It
 * follows from the records, so a popup that is opened anew knows it too.
 */
export function savedMeal(entries: readonly RecordRow[], device: string | null, now: number): Done | null {
  const whole = entries
    .filter((row) => isAsMade(row, device))
    .flatMap((row) => readRecord('entry', row) ?? [])
    // Those after now were logged before the clock was set back.
    .filter(({ at }) => Math.abs(now - at) < UNDO_MS);
  const newest = Math.max(...whole.map(({ at }) => at));
  const saved = whole.filter(({ at }) => at > newest - ONE_LINE_MS).sort((a, b) => a.at - b.at);
  const [first] = saved;
  if (first === undefined) return null;
  return {
    text: loggedWords(foodsWords(saved), first.meal),
    undo: saved.map(({ athlete, id }) => ({ athlete, kind: 'entry', record: id, fields: { removed: true } })),
  };
}

/** One food by its name, several by their number. */
export function foodsWords(foods: readonly { name: string }[]): string {
  const [first] = foods;
  return foods.length === 1 && first !== undefined ? first.name : `${foods.length} foods`;
}

/** One change made all of it: nobody has touched it since. */
function isAsMade({ clocks }: RecordRow, device: string | null): boolean {
  const [clock, ...later] = new Set(Object.values(clocks));
  return clock !== undefined && later.length === 0 && clockDevice(clock) === device;
}
