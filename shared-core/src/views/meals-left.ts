import type { PlannedMeal } from '../targets/types.ts';
import type { Macros, MealView } from './types.ts';

type Gram = 'proteinG' | 'carbohydrateG' | 'fatG';
type Left = MealView['left'];

/** What the plan asks of a meal and what it had. */
export interface MealSoFar {
  plan: PlannedMeal;
  eaten: Macros;
}

/**
 * What is left for each meal, in grams, never negative. Meals before `next` are over: what they missed or had too much
 * is shared out over the meals from `next` on, in proportion to the plan. The sum is what the day still lacks.
 */
export function mealsLeft(meals: readonly MealSoFar[], next: number): Left[] {
  const protein = shareOut(meals, next, 'proteinG');
  const carbohydrate = shareOut(meals, next, 'carbohydrateG');
  const fat = shareOut(meals, next, 'fatG');
  return meals.map((_, i) => ({
    proteinG: protein[i] ?? 0,
    carbohydrateG: carbohydrate[i] ?? 0,
    fatG: fat[i] ?? 0,
  }));
}

function shareOut(meals: readonly MealSoFar[], next: number, gram: Gram): number[] {
  const sum = (of: readonly MealSoFar[], part: (meal: MealSoFar) => number) =>
    of.reduce((total, meal) => total + part(meal), 0);
  const day = sum(meals, (meal) => meal.plan[gram]);
  const eaten = sum(meals, (meal) => meal.eaten[gram]);
  let open = meals.filter((meal) => meal.plan.meal >= next);
  // A meal that had more than its share is over as well, and its surplus makes the shares of the others smaller.
  for (;;) {
    const budget = Math.max(0, day - eaten + sum(open, (meal) => meal.eaten[gram]));
    const planned = sum(open, (meal) => meal.plan[gram]);
    const left = (meal: MealSoFar) =>
      planned > 0 ? (budget * meal.plan[gram]) / planned - meal.eaten[gram] : 0;
    const still = open.filter((meal) => left(meal) > 0);
    if (still.length === open.length) return meals.map((meal) => (open.includes(meal) ? left(meal) : 0));
    open = still;
  }
}
