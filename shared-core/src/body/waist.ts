import { huberFit } from '../trend/huber.ts';

/** A waist reading; `day` counts days from any fixed date. */
export interface WaistReading {
  day: number;
  cm: number;
}

/** Error of a waist that one measures oneself, cm (from memory). */
const TAPE_ERROR_CM = 1;

/** What a kilogram of fat adds to the waist, cm, and how much people differ (common practice, no source). */
export const waistCmPerFatKg = { mean: 0.95, sd: 0.3 } as const;

/**
 * Change of the waist from the first day to the last, cm, with its standard deviation: a straight line through the
 * readings that a misread tape does not turn. Null with fewer than three readings or when they span less than two weeks.
 */
export function waistChange(
  readings: readonly WaistReading[],
  firstDay: number,
  lastDay: number,
): { mean: number; sd: number } | null {
  const within = readings.filter(({ day }) => day >= firstDay && day <= lastDay);
  const days = within.map(({ day }) => day);
  if (within.length < 3 || Math.max(...days) - Math.min(...days) < 14) return null;
  const line = huberFit(
    within.map(({ day }) => [1, day - firstDay]),
    within.map(({ cm }) => cm),
    TAPE_ERROR_CM,
  );
  if (!line) return null;
  const span = lastDay - firstDay;
  return { mean: (line.coefficients[1] ?? 0) * span, sd: (line.errors[1] ?? 0) * span };
}
