import { roundTo } from '../units/round.ts';

/** The carbohydrate band and the start of the mark as multiples of the protein quota; common practice, no source. */
export const bandFactors = { low: 1.5, start: 1.75, high: 2 } as const;

/** Low and high grams of carbohydrate a day, from the protein quota in g; common practice, no source. */
export function carbohydrateBand(quotaG: number): { lowG: number; highG: number } {
  return { lowG: roundTo(bandFactors.low * quotaG, 1), highG: roundTo(bandFactors.high * quotaG, 1) };
}

/** The carbohydrate mark before anyone decided on one, g a day: the middle of the band, in whole fives like every call. */
export function startMark(quotaG: number): number {
  return roundTo(bandFactors.start * quotaG, 5);
}
