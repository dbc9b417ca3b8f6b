import type { Estimate } from '../src/trend/estimate.ts';
import type { Frame } from './mass-axes.tsx';

/** A day of an axis and an estimate of body mass in the chart's unit. */
interface BandPoint {
  day: number;
  mass: Estimate;
}

/** SVG path through the means. */
export function linePath(frame: Frame, points: readonly BandPoint[]): string {
  return pathThrough(
    frame,
    points.map(({ day, mass }) => [day, mass.mean]),
  );
}

/** SVG path around the 90 % interval. */
export function ribbonPath(frame: Frame, points: readonly BandPoint[]): string {
  if (points.length === 0) return '';
  const upper = points.map(({ day, mass }): Corner => [day, mass.interval90.high]);
  const lower = points.map(({ day, mass }): Corner => [day, mass.interval90.low]);
  return `${pathThrough(frame, [...upper, ...lower.reverse()])}Z`;
}

/** SVG path along both ends of the 90 % interval. */
export function edgesPath(frame: Frame, points: readonly BandPoint[]): string {
  const ends = (['high', 'low'] as const).map((end) =>
    points.map(({ day, mass }): Corner => [day, mass.interval90[end]]),
  );
  return ends.map((corners) => pathThrough(frame, corners)).join('');
}

type Corner = readonly [day: number, mass: number];

/** SVG path through points given as day and mass. */
export function pathThrough(frame: Frame, corners: readonly Corner[]): string {
  if (corners.length === 0) return '';
  return `M${corners.map(([day, mass]) => `${frame.x(day).toFixed(1)} ${frame.y(mass).toFixed(1)}`).join('L')}`;
}

/** An estimate with another unit. */
export function mapEstimate(estimate: Estimate, convert: (value: number) => number): Estimate {
  const { mean, interval90 } = estimate;
  return {
    mean: convert(mean),
    interval90: { low: convert(interval90.low), high: convert(interval90.high) },
  };
}
