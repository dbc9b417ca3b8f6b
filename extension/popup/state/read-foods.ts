import type { Food } from '@platewright/core/records/kinds.ts';
import { reader } from '../../platform/replica.ts';
import { recordById } from '../../replica/season.ts';

/** Foods with all that is known of them, by id; those no longer in the larder are left out. */
export async function readFoods(athlete: string, ids: readonly string[]): Promise<Map<string, Food>> {
  const foods = await reader.read((reading) =>
    Promise.all([...new Set(ids)].map((id) => recordById(reading, athlete, 'food', id))),
  );
  return new Map((foods ?? []).flatMap((food) => (food === null ? [] : [[food.id, food]])));
}
