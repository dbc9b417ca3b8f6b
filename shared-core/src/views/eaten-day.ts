import { type NutrientSum, sumNutrients } from '../foods/nutrients.ts';
import type { Entry } from '../records/kinds.ts';

/** What the entries of a date come to: all that a view of many dates needs of them. */
export interface EatenDay {
  date: string;
  sum: NutrientSum;
  /** Meals that have entries. */
  meals: readonly number[];
}

/** A date's entries, on top of those with smaller ids that `before` holds. */
export function eatenDay(date: string, entries: readonly Entry[], before?: EatenDay): EatenDay {
  // Sorted, so that the sum has the same last bit whatever order the entries came in.
  const inOrder = entries.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  return {
    date,
    sum: sumNutrients(inOrder, before?.sum),
    meals: [...new Set([...(before?.meals ?? []), ...inOrder.map(({ meal }) => meal)])],
  };
}
