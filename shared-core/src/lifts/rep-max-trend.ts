import { z90 } from '../trend/reading.ts';
import { median, theilSen } from '../trend/robust.ts';
import { repMax } from './rep-max.ts';

/** A set of a key lift; `day` counts days from any fixed date. */
export interface DatedSet {
  day: number;
  loadKg: number;
  repetitions: number;
}

export interface RepMaxTrend {
  /** Days with a set that a rep max can be told from. */
  sessions: number;
  /** Rep max at the end of the window, kg: the line's value on the last day. */
  repMaxKg: number;
  /** Change in % of the rep max a week, with its 90 % interval. */
  percentPerWeek: { mean: number; interval90: { low: number; high: number } };
}

/** Fewer sessions or days than these are no trend (common practice, no source). */
const LEAST_SESSIONS = 4;
const LEAST_DAYS = 14;

/**
 * Where the rep max of one key lift is heading: best rep max of each day, line through them by Theil–Sen, so that one bad
 * session or one misread bar does not turn it. Null while there are too few sessions.
 */
export function repMaxTrend(sets: readonly DatedSet[]): RepMaxTrend | null {
  const best = new Map<number, number>();
  for (const { day, loadKg, repetitions } of sets) {
    const found = repMax(loadKg, repetitions);
    if (found) best.set(day, Math.max(found.kg, best.get(day) ?? 0));
  }
  const points = [...best].map(([x, y]) => ({ x, y }));
  const days = points.map(({ x }) => x);
  if (points.length < LEAST_SESSIONS || Math.max(...days) - Math.min(...days) < LEAST_DAYS) return null;
  const line = theilSen(points, z90);
  if (!line) return null;
  const weekly = 700 / median(points.map(({ y }) => y));
  return {
    sessions: points.length,
    repMaxKg: line.intercept + line.slope * Math.max(...days),
    percentPerWeek: {
      mean: weekly * line.slope,
      interval90: { low: weekly * line.low, high: weekly * line.high },
    },
  };
}
