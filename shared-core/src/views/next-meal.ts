import { energyKcal } from '../foods/atwater.ts';
import { endOfDay, minutesAfterWake } from '../season/time-of-day.ts';
import type { MealSoFar } from './meals-left.ts';

/** A meal with so much of its protein and energy counts as eaten, and the next one is up (common practice, no source). */
const ENOUGH = 0.8;

/**
 * Number of the meal to log next. By the clock it is the meal whose time is nearest; what is logged moves it on, and a
 * meal that was only begun stays. After sleep, or on a past date, it is the first meal without an entry.
 * `nowMinutes` counts from the date's midnight, beyond 24 h after the next one.
 */
export function nextMeal(
  meals: readonly (MealSoFar & { logged: boolean })[],
  nowMinutes: number,
  day: { wake: string; sleep: string },
): number {
  const last = meals.length;
  if (nowMinutes > endOfDay(day)) {
    return meals.find((meal) => !meal.logged)?.plan.meal ?? last;
  }
  const nearest = meals.reduce((best, { plan }) => {
    const previous = meals[best - 1];
    if (previous === undefined) return plan.meal;
    const middle =
      (minutesAfterWake(previous.plan.time, day.wake) + minutesAfterWake(plan.time, day.wake)) / 2;
    return nowMinutes >= middle ? plan.meal : best;
  }, 1);
  const latestLogged = meals.findLast((meal) => meal.logged)?.plan.meal ?? 0;
  const current = Math.max(nearest, latestLogged);
  const meal = meals[current - 1];
  return meal !== undefined && isEaten(meal) ? Math.min(current + 1, last) : current;
}

function isEaten({ plan, eaten }: MealSoFar): boolean {
  return eaten.proteinG >= ENOUGH * plan.proteinG && eaten.energyKcal >= ENOUGH * energyKcal(plan);
}
