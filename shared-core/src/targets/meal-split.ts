import { timeOf } from '../season/time-of-day.ts';
import type { MealTime } from './meal-times.ts';
import type { PlannedMeal } from './types.ts';

interface Shares {
  carbohydrate: number;
  /** Part of this meal's carbohydrate that is quick. */
  quick: number;
  fat: number;
}

/**
 * Shares of a meal beside a plain one; common practice, no source: half the carbohydrate in the small meal before a
 * session and half as much again after it, quick only there, and less fat close to the session, because fat is slow to
 * leave the stomach. Protein is the same at every meal.
 */
const sharesOf: Record<PlannedMeal['role'], Shares> = {
  meal: { carbohydrate: 1, quick: 0, fat: 1 },
  'before training': { carbohydrate: 1, quick: 0, fat: 1 },
  'small, before training': { carbohydrate: 0.5, quick: 1, fat: 0.5 },
  'after training': { carbohydrate: 1.5, quick: 0.5, fat: 0.5 },
};

/** The day's grams shared out over its meals: whole grams at every meal, and their sums are the day's grams. */
export function splitMeals(
  times: readonly MealTime[],
  day: { proteinG: number; carbohydrateG: number; fatG: number },
): PlannedMeal[] {
  const shares = times.map(({ role }) => sharesOf[role]);
  const protein = apportion(
    day.proteinG,
    shares.map(() => 1),
  );
  const carbohydrate = apportion(
    day.carbohydrateG,
    shares.map((share) => share.carbohydrate),
  );
  const fat = apportion(
    day.fatG,
    shares.map((share) => share.fat),
  );
  return times.map(({ minutes, role }, i) => {
    const carbohydrateG = carbohydrate[i] ?? 0;
    return {
      meal: i + 1,
      time: timeOf(minutes),
      role,
      proteinG: protein[i] ?? 0,
      carbohydrateG,
      quickG: Math.round(carbohydrateG * sharesOf[role].quick),
      fatG: fat[i] ?? 0,
    };
  });
}

/** A total cut by weights at whole numbers; what rounding leaves over never gathers in one place. */
function apportion(total: number, weights: readonly number[]): number[] {
  const sum = weights.reduce((a, b) => a + b, 0);
  let weight = 0;
  let given = 0;
  return weights.map((w, i) => {
    weight += w;
    const upTo = i === weights.length - 1 ? total : Math.round((total * weight) / sum);
    const part = upTo - given;
    given = upTo;
    return part;
  });
}
