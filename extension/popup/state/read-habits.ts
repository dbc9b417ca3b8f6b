import { type FoodIndex, indexFoods } from '@platewright/core/foods/search/food-index.ts';
import type { Athlete, Entry, StandingMeal } from '@platewright/core/records/kinds.ts';
import { habitsSince, recentEntries } from '@platewright/core/views/habits.ts';
import { foodsOf, type LarderFood, readLarder } from '../../replica/larder.ts';
import type { Reader } from '../../replica/reader.ts';
import { recordsBetween } from '../../replica/season.ts';

/** What the typed line is read against, and what is offered before a key is pressed. */
export interface Habits {
  /** The larder in short, as it was read. */
  larder: string;
  index: FoodIndex<LarderFood>;
  /** Entries of the last weeks. */
  recent: readonly Entry[];
  /** By name. */
  standingMeals: readonly StandingMeal[];
}

/** Reads the larder in short, and the habits up to a date. The index of `before` is kept when the larder is the same. */
export function readHabits(
  reader: Reader,
  athlete: Athlete,
  date: string,
  before: Habits | null,
): Promise<Habits | null> {
  return reader.read(async (reading) => {
    const [larder, entries, standingMeals] = await Promise.all([
      readLarder(reading, athlete.id),
      recordsBetween(reading, athlete.id, 'entry', habitsSince(date), date),
      recordsBetween(reading, athlete.id, 'standing-meal', '', ''),
    ]);
    standingMeals.sort((a, b) => a.name.localeCompare(b.name));
    const index = before?.larder === larder ? before.index : indexFoods(foodsOf(larder));
    return { larder, index, recent: recentEntries(entries, date), standingMeals };
  });
}
