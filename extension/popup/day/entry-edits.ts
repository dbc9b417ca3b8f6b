import { entriesOf } from '@platewright/core/foods/entries-of.ts';
import type { Food, StandingMeal } from '@platewright/core/records/kinds.ts';
import type { Edit, Source } from '../../replica/edit.ts';

/** Where an entry goes. */
export interface Place {
  athlete: string;
  date: string;
  meal: number;
}

/** So much of a food is logged. */
export interface FoodAmount {
  food: string;
  grams: number;
  amount: string | null;
}

/** Edits that log foods at a meal, with a copy of their nutrients as they are now. Foods not in `known` are left out. */
export function logEdits(
  known: ReadonlyMap<string, Food>,
  source: Source,
  { athlete, date, meal }: Place,
  amounts: readonly FoodAmount[],
): Edit[] {
  const items = amounts.flatMap(({ food: id, ...weighed }) => {
    const food = known.get(id);
    return food === undefined ? [] : [{ food, ...weighed }];
  });
  return entriesOf(items, { date, meal, at: source.now() }).map((entry) => ({
    athlete,
    kind: 'entry',
    record: source.newId(),
    // Through text, so that what is undefined is left out, as it is on the wire.
    fields: JSON.parse(JSON.stringify(entry)),
  }));
}

export function amountsOf(meal: StandingMeal): FoodAmount[] {
  return meal.items
    .filter(({ grams }) => grams > 0)
    .map(({ food, grams }) => ({ food, grams, amount: null }));
}

/** What of an entry the popup changes. */
export interface EntryFields {
  grams?: number;
  amount?: null;
  meal?: number;
  date?: string;
  removed?: boolean;
}

export function entryEdit(athlete: string, entry: string, fields: EntryFields): Edit {
  return { athlete, kind: 'entry', record: entry, fields: { ...fields } };
}
