import type { FieldsOf, Food, StandingMeal } from '@platewright/core/records/kinds.ts';
import type { Edit, Source } from '../../replica/edit.ts';

/** Where an entry goes. */
export interface Place {
  athlete: string;
  date: string;
  meal: number;
}

/** A food to log. */
export interface Portion {
  food: string;
  grams: number;
  amount: string | null;
}

/** Edits that log foods at a meal, with a copy of their nutrients as they are now. Foods not in `known` are left out. */
export function logEdits(
  known: ReadonlyMap<string, Food>,
  source: Source,
  place: Place,
  portions: readonly Portion[],
): Edit[] {
  const at = source.now();
  return portions.flatMap(({ food, grams, amount }, i): Edit[] => {
    const record = known.get(food);
    if (record === undefined) return [];
    const fields: FieldsOf<'entry'> = {
      date: place.date,
      meal: place.meal,
      food,
      name: record.name,
      grams,
      per100: record.per100,
      // One by one, so that they stay in the order in which they were typed.
      at: at + i,
    };
    const typed = amount === null ? fields : { ...fields, amount };
    // Through text, so that what is undefined is left out, as it is on the wire.
    return [
      {
        athlete: place.athlete,
        kind: 'entry',
        record: source.newId(),
        fields: JSON.parse(JSON.stringify(typed)),
      },
    ];
  });
}

export function portionsOf(meal: StandingMeal): Portion[] {
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
