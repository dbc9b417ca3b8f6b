import type { Food } from '@platewright/core/records/kinds.ts';
import type { Reading } from './reader.ts';
import { recordsBetween } from './season.ts';

/** What the typed line has to know of a food; its nutrients are read when it is logged. */
export type LarderFood = Pick<Food, 'id' | 'name' | 'aliases' | 'portions'>;

/** Name of the meta row that holds an athlete's larder in short. */
export function larderName(athlete: string): string {
  return `larder ${athlete}`;
}

/**
 * The foods that can be logged, in short, as text. Kept so by the worker, because thousands of rows take longer to read
 * than one, and thrown away whenever a food changes (see `dexieReplica`); until it is there again all foods are read.
 */
export async function readLarder(reading: Reading, athlete: string): Promise<string> {
  const kept = await reading.meta(larderName(athlete));
  if (typeof kept === 'string') return kept;
  return inShort(await recordsBetween(reading, athlete, 'food', '', ''));
}

export function inShort(foods: readonly Food[]): string {
  const shown = foods.filter((food) => food.hidden !== true);
  return JSON.stringify(shown.map(({ id, name, aliases, portions }) => ({ id, name, aliases, portions })));
}

export function foodsOf(larder: string): LarderFood[] {
  return JSON.parse(larder);
}
