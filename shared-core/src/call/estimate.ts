import { z90 } from '../trend/reading.ts';
import type { Estimate } from './output.ts';

/** A mean and a standard deviation as a mean with its 90 % interval. */
export function estimate(mean: number, sd: number): Estimate {
  return { mean, interval90: { low: mean - z90 * sd, high: mean + z90 * sd } };
}
