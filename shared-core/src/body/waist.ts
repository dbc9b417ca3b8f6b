import { tapeErrorCm } from '../maintenance/tape.ts';
import { huberFit } from '../trend/huber.ts';

/** A waist reading; `day` counts days from any fixed date. */
export interface WaistReading {
  day: number;
  cm: number;
}

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
    tapeErrorCm,
  );
  if (!line) return null;
  const span = lastDay - firstDay;
  return { mean: (line.coefficients[1] ?? 0) * span, sd: (line.errors[1] ?? 0) * span };
}
