import { fatAfter } from '../maintenance/energy-density.ts';

/**
 * Fat-free mass in kg after body mass moved away from a start at which fat was known: the larger of two readings, along
 * the Forbes curve and at the share of the start, because a guard of energy availability should ask for too much energy
 * rather than too little. `massKg` is tissue; `scaleKg` is what a scale shows where that is known to hold water besides.
 */
export function fatFreeKg(
  start: { massKg: number; fatKg: number },
  massKg: number,
  scaleKg: number = massKg,
): number {
  const onCurve = massKg - fatAfter(start.fatKg, massKg - start.massKg);
  const atShare = scaleKg * (1 - start.fatKg / start.massKg);
  return Math.max(onCurve, atShare);
}
