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
 * The foods that can be logged, in short. Kept by the worker as one text, because thousands of rows take longer to read
 * than one, and thrown away whenever a food changes (see `dexieReplica`); until it is there again all foods are read.
 */
export async function readLarder(reading: Reading, athlete: string): Promise<LarderFood[]> {
  const kept = await reading.meta(larderName(athlete));
  return typeof kept === 'string'
    ? JSON.parse(kept)
    : inShort(await recordsBetween(reading, athlete, 'food', '', ''));
}

export function inShort(foods: readonly Food[]): LarderFood[] {
  return foods
    .filter((food) => food.hidden !== true)
    .map(({ id, name, aliases, portions }) => ({ id, name, aliases, portions }));
}
