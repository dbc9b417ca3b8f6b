import { foldSum } from '../body/calipers.ts';
import type { Athlete, Calipers } from '../records/kinds.ts';
import type { CalipersView } from './body-types.ts';
import { byCalipers } from './fat-on.ts';

/** Sets of skinfolds with what their method tells; `calipers` oldest first, the answer newest first. */
export function calipersOf(athlete: Athlete, calipers: readonly Calipers[]): CalipersView[] {
  return calipers
    .map((reading) => ({
      id: reading.id,
      date: reading.date,
      method: reading.method,
      sumMm: foldSum(athlete.sex, reading.method, reading.folds),
      fat: byCalipers(athlete, reading),
    }))
    .reverse();
}
