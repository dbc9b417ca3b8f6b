import type { ForecastFan } from '@platewright/core/call/output.ts';
import type { Estimate } from '@platewright/core/trend/estimate.ts';

/** The forecast at a mark between those that were computed, lowest mark first; null when it lies outside of them. */
export function fanAt(fans: readonly ForecastFan[], markG: number): ForecastFan | null {
  const above = fans.find((fan) => fan.markG >= markG);
  const below = fans.findLast((fan) => fan.markG <= markG);
  if (!above || !below) return null;
  if (above === below) return above;
  const share = (markG - below.markG) / (above.markG - below.markG);
  const mix = (a: Estimate, b: Estimate): Estimate => {
    const between = (from: number, to: number) => from + share * (to - from);
    return {
      mean: between(a.mean, b.mean),
      interval90: {
        low: between(a.interval90.low, b.interval90.low),
        high: between(a.interval90.high, b.interval90.high),
      },
    };
  };
  return {
    markG,
    pacePercentPerWeek: mix(below.pacePercentPerWeek, above.pacePercentPerWeek),
    points: below.points.map((point, index) => ({
      day: point.day,
      massKg: mix(point.massKg, above.points[index]?.massKg ?? point.massKg),
    })),
  };
}
