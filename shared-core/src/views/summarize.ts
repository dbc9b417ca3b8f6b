import type { Macros } from './types.ts';
import type { DaysSummary, WeekDayRow } from './week-types.ts';

/** Means over dates: body mass over those with a weigh-in, intake and what was asked over those that are complete. */
export function summarize(days: readonly WeekDayRow[]): DaysSummary {
  const weights = days.map((day) => day.weightKg).filter((kg) => kg !== null);
  const complete = days.filter((day) => day.complete && day.intake !== null);
  return {
    weighIns: weights.length,
    completeDates: complete.length,
    weightKg: weights.length === 0 ? null : mean(weights),
    intake: meanMacros(complete.map((day) => day.intake).filter((intake) => intake !== null)),
    prescribed: meanMacros(complete.map((day) => day.prescribed)),
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function meanMacros(macros: readonly Macros[]): Macros | null {
  if (macros.length === 0) return null;
  const of = (key: keyof Macros) => mean(macros.map((m) => m[key]));
  return {
    energyKcal: of('energyKcal'),
    proteinG: of('proteinG'),
    carbohydrateG: of('carbohydrateG'),
    fatG: of('fatG'),
  };
}
