import { generalFactors } from '../foods/atwater.ts';
import { roundTo } from '../units/round.ts';
import type { DayTargets } from './types.ts';

/** Limits under which fat should not go. */
export const fatLimits = {
  /** g per kg of body mass a day: low end of Iraki et al. 2019, 0.5 to 1.5. */
  gPerKg: 0.5,
  /** Share of energy: low end of Helms et al. 2014, 15 to 30 %. */
  energyShare: 0.15,
  /** Share of energy that is usual in health: AMDR, IOM 2005, 20 to 35 %. */
  usualShare: 0.2,
} as const;

/**
 * Fat in g that makes a share of the day's energy when protein and carbohydrate are given in g:
 * share / (1 − share) × (4 P + 4 C) / 9, the closed form of F = share × energy(P, C, F) / 9.
 */
export function fatForShare(share: number, proteinG: number, carbohydrateG: number): number {
  const rest = generalFactors.protein * proteinG + generalFactors.carbohydrate * carbohydrateG;
  return ((share / (1 - share)) * rest) / generalFactors.fat;
}

/**
 * Fat target in whole grams a day at a rate in g/kg, never under the limit by body mass. It does not follow the share of
 * energy: it would rise with the mark, and a call's step would move more energy than the call reckoned with.
 */
export function fatTarget(bodyMassKg: number, gPerKg: number): number {
  return Math.max(roundTo(gPerKg * bodyMassKg, 1), Math.ceil(fatLimits.gPerKg * bodyMassKg));
}

/**
 * Floor of fat in whole grams a day, never under a limit, and the limit that sets it. A target under the share of energy
 * is said, not lifted.
 */
export function fatFloor(
  bodyMassKg: number,
  proteinG: number,
  carbohydrateG: number,
): { floorG: number; floorRule: DayTargets['fat']['floorRule'] } {
  const byMass = fatLimits.gPerKg * bodyMassKg;
  const byEnergy = fatForShare(fatLimits.energyShare, proteinG, carbohydrateG);
  return byMass >= byEnergy
    ? { floorG: Math.ceil(byMass), floorRule: 'g/kg' }
    : { floorG: Math.ceil(byEnergy), floorRule: '% of energy' };
}

/**
 * Essential fatty acids in g a day. Linoleic and alpha-linolenic acid: adequate intake, IOM 2005, adults of 19 to 50
 * years (values from memory, and seen in an open table). EPA and DHA together: adequate intake, EFSA 2010.
 */
export function essentialFats(
  sex: 'female' | 'male',
): Pick<DayTargets['fat'], 'linoleicG' | 'alphaLinolenicG' | 'epaDhaG'> {
  return sex === 'male'
    ? { linoleicG: 17, alphaLinolenicG: 1.6, epaDhaG: 0.25 }
    : { linoleicG: 12, alphaLinolenicG: 1.1, epaDhaG: 0.25 };
}
