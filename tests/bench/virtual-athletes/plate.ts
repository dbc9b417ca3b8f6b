import type { DayGrams, DayIntake } from '@platewright/core/maintenance/day-table.ts';
import type { EatingLuck } from './life.ts';

/** The practice's start: quota 3.3 g/kg, mark 1.75 × quota, fat 1 g/kg (common practice, no source). */
export function startByRule(massKg: number): DayGrams {
  const proteinG = Math.round(3.3 * massKg);
  return { proteinG, carbohydrateG: Math.round(1.75 * proteinG), fatG: Math.round(massKg) };
}

/** Energy by the general factors 4, 4 and 9, kcal. */
export function kcalOf(grams: DayGrams): number {
  return 4 * grams.proteinG + 4 * grams.carbohydrateG + 9 * grams.fatG;
}

/** The deviation from the plan falls on carbohydrate and fat, a little on protein. */
export function eat(prescribed: DayGrams, luck: EatingLuck, day: number): DayGrams {
  const deviationKcal = kcalOf(prescribed) * ((luck.eaten[day] ?? 1) - 1);
  const onProtein = 0.15;
  const onCarbohydrate = (1 - onProtein) * (luck.onCarbohydrate[day] ?? 0.6);
  const carbohydrateG = Math.max(10, prescribed.carbohydrateG + (onCarbohydrate * deviationKcal) / 4);
  return {
    proteinG: Math.max(10, prescribed.proteinG + (onProtein * deviationKcal) / 4),
    carbohydrateG,
    fatG: Math.max(5, prescribed.fatG + ((1 - onProtein - onCarbohydrate) * deviationKcal) / 9),
  };
}

/** What the log says of a day, null when nothing was logged. */
export function writeLog(eaten: DayGrams, luck: EatingLuck, day: number): DayIntake | null {
  if (luck.missing[day]) return null;
  const half = luck.half[day] === 1;
  const share = (luck.logged[day] ?? 1) * (half ? 0.5 : 1);
  return {
    proteinG: Math.round(eaten.proteinG * share),
    carbohydrateG: Math.round(eaten.carbohydrateG * share),
    fatG: Math.round(eaten.fatG * share),
    complete: !half,
  };
}
