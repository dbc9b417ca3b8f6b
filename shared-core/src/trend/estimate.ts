import { z90 } from './normal.ts';

/** A mean and its 90 % interval. */
export interface Estimate {
  mean: number;
  interval90: Interval;
}

export interface Interval {
  low: number;
  high: number;
}

/** A mean and a standard deviation as a mean with its 90 % interval. */
export function estimate(mean: number, sd: number): Estimate {
  return { mean, interval90: { low: mean - z90 * sd, high: mean + z90 * sd } };
}
