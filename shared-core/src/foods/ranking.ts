import type { Entry } from '../records/kinds.ts';
import { dayNumber } from '../units/day-number.ts';

/** What ranking has to know of an entry. */
export type Eaten = Pick<Entry, 'date' | 'meal' | 'food' | 'name' | 'grams' | 'amount' | 'per100'>;

/** The meal that is about to be logged. */
export interface Occasion {
  date: string;
  /** Null for no meal in particular. */
  meal: number | null;
  /** `session` or `recovery`, for this date and those of the entries. */
  kindOf: (date: string) => string;
}

/** What is left for a meal, g. */
export interface Left {
  proteinG: number;
  carbohydrateG: number;
  fatG: number;
}

/** What an athlete eats of a food on occasions like one. */
export interface FoodHabit {
  food: string;
  /** How often of late; a relative number, for search. */
  usage: number;
  /** The usual amount. */
  grams: number;
  amount: string | null;
}

/** A food that this athlete is likely to eat now, in the usual amount. */
export interface Suggestion {
  food: string;
  name: string;
  grams: number;
  amount: string | null;
}

// How much an entry says about the next meal. All four: common practice, no source.
const halfLifeDays = 14;
const otherMeal = 0.15;
const otherKindOfDay = 0.5;
/** What does not fit what is left loses at most this share of its weight: it is a nudge, habit decides. */
const mostMisfit = 0.4;

/** How much an entry counts on an occasion: 1 for the same meal today, less for older, other meals and kinds of day. */
function weightOf(entry: Eaten, { date, meal, kindOf }: Occasion): number {
  const ageDays = Math.abs(dayNumber(date) - dayNumber(entry.date));
  return (
    2 ** (-ageDays / halfLifeDays) *
    (meal === null || entry.meal === meal ? 1 : otherMeal) *
    (kindOf(entry.date) === kindOf(date) ? 1 : otherKindOfDay)
  );
}

/** What is eaten of each food of late on occasions like this one; foods in the order in which entries name them. */
export function habitsOf(entries: readonly Eaten[], occasion: Occasion): FoodHabit[] {
  const byFood = Map.groupBy(
    entries.map((entry) => ({ entry, weight: weightOf(entry, occasion) })),
    ({ entry }) => entry.food,
  );
  return [...byFood].map(([food, weighted]) => ({
    food,
    usage: weighted.reduce((sum, { weight }) => sum + weight, 0),
    ...usualAmount(weighted),
  }));
}

/** The weighted median of a food's entries, so one feast does not move it, and always an amount that was really eaten. */
function usualAmount(
  weighted: readonly { entry: Eaten; weight: number }[],
): Omit<FoodHabit, 'food' | 'usage'> {
  const byGrams = weighted.toSorted((a, b) => a.entry.grams - b.entry.grams);
  const half = byGrams.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let sum = 0;
  const usual = byGrams.find(({ weight }) => {
    sum += weight;
    return sum >= half;
  });
  return { grams: usual?.entry.grams ?? 0, amount: usual?.entry.amount ?? null };
}

/**
 * What this athlete most likely eats at this meal of this kind of day, likeliest first, without what the meal already has.
 * `entries` are those of the last weeks; what fits into what is `left` goes a little ahead.
 */
export function suggestFoods(
  entries: readonly Eaten[],
  occasion: Occasion,
  left: Left | null,
  limit: number,
): Suggestion[] {
  const here = new Set(
    entries
      .filter(({ date, meal }) => date === occasion.date && meal === occasion.meal)
      .map(({ food }) => food),
  );
  const latest = new Map<string, Eaten>();
  for (const entry of entries) {
    if (entry.date >= (latest.get(entry.food)?.date ?? '')) latest.set(entry.food, entry);
  }
  return habitsOf(entries, occasion)
    .filter(({ food }) => !here.has(food))
    .flatMap(({ food, usage, grams, amount }) => {
      const last = latest.get(food);
      if (!last) return [];
      const weight = usage * (1 - mostMisfit * (left ? misfit(last.per100, grams, left) : 0));
      return [{ weight, suggestion: { food, name: last.name, grams, amount } }];
    })
    .sort((a, b) => b.weight - a.weight)
    .slice(0, limit)
    .map(({ suggestion }) => suggestion);
}

/** The share of a food's protein, carbohydrate and fat that is more than what is left of each; 0 fits, 1 is all too much. */
function misfit(per100: Eaten['per100'], grams: number, left: Left): number {
  const parts = [
    [per100.proteinG, left.proteinG],
    [per100.carbohydrateG, left.carbohydrateG],
    [per100.fatG, left.fatG],
  ] as const;
  let all = 0;
  let over = 0;
  for (const [per100g, room] of parts) {
    const brings = (per100g * grams) / 100;
    all += brings;
    over += Math.max(0, brings - Math.max(0, room));
  }
  return all > 0 ? over / all : 0;
}
