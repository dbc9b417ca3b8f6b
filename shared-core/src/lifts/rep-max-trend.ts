import type { Estimate } from '../trend/estimate.ts';
import { z90 } from '../trend/normal.ts';
import { median, theilSen } from '../trend/robust.ts';
import { bestOfDays } from './rep-max.ts';

/** A set of a key lift; `day` counts days from any fixed date. */
export interface DatedSet {
  day: number;
  loadKg: number;
  repetitions: number;
}

export interface RepMaxTrend {
  /** Days with a set that a rep max can be told from. */
  sessions: number;
  /** Rep max in kg on the first, the middle and the last day; the intervals are those of the slope, so none in the middle. */
  line: readonly [TrendPoint, TrendPoint, TrendPoint];
  /** Change in % of the rep max a week, with its 90 % interval. */
  percentPerWeek: Estimate;
}

interface TrendPoint {
  day: number;
  kg: Estimate;
}

/** Fewer sessions or days than these are no trend (common practice, no source). */
const LEAST_SESSIONS = 4;
const LEAST_DAYS = 14;

/**
 * Where the rep max of one key lift is heading: best rep max of each day, line through them by Theil–Sen, so that one bad
 * session or one misread bar does not turn it. Null while there are too few sessions.
 */
export function repMaxTrend(sets: readonly DatedSet[]): RepMaxTrend | null {
  const points = [...bestOfDays(sets, ({ day }) => day)].map(([x, { kg }]) => ({ x, y: kg }));
  const days = points.map(({ x }) => x);
  if (points.length < LEAST_SESSIONS || Math.max(...days) - Math.min(...days) < LEAST_DAYS) return null;
  const line = theilSen(points, z90);
  if (!line) return null;
  const [middleDay, middleKg] = [median(days), median(points.map(({ y }) => y))];
  const weekly = 700 / middleKg;
  const pointAt = (day: number): TrendPoint => {
    const ends = [line.low, line.high].map((slope) => middleKg + slope * (day - middleDay));
    return {
      day,
      kg: {
        mean: line.intercept + line.slope * day,
        interval90: { low: Math.min(...ends), high: Math.max(...ends) },
      },
    };
  };
  return {
    sessions: points.length,
    line: [pointAt(Math.min(...days)), pointAt(middleDay), pointAt(Math.max(...days))],
    percentPerWeek: {
      mean: weekly * line.slope,
      interval90: { low: weekly * line.low, high: weekly * line.high },
    },
  };
}
