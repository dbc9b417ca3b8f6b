import { generalFactors } from '../foods/atwater.ts';
import type { Person } from '../maintenance/start-estimate.ts';
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

/** Adequate intakes of linoleic and alpha-linolenic acid, g a day, up to an age: IOM 2005, summary table of macronutrients. */
const adequateIntakes = {
  male: [
    { toAge: 13, linoleicG: 12, alphaLinolenicG: 1.2 },
    { toAge: 18, linoleicG: 16, alphaLinolenicG: 1.6 },
    { toAge: 50, linoleicG: 17, alphaLinolenicG: 1.6 },
    { toAge: Number.POSITIVE_INFINITY, linoleicG: 14, alphaLinolenicG: 1.6 },
  ],
  female: [
    { toAge: 13, linoleicG: 10, alphaLinolenicG: 1 },
    { toAge: 18, linoleicG: 11, alphaLinolenicG: 1.1 },
    { toAge: 50, linoleicG: 12, alphaLinolenicG: 1.1 },
    { toAge: Number.POSITIVE_INFINITY, linoleicG: 11, alphaLinolenicG: 1.1 },
  ],
} as const;

/**
 * Essential fatty acids in g a day. Linoleic and alpha-linolenic acid: adequate intake by sex and age, IOM 2005 (those of
 * 51 to 70 years and over 70 are the same). EPA and DHA together: adequate intake of adults, EFSA 2010.
 */
export function essentialFats({
  sex,
  ageYears,
}: Pick<Person, 'sex' | 'ageYears'>): Pick<DayTargets['fat'], 'linoleicG' | 'alphaLinolenicG' | 'epaDhaG'> {
  const intakes = adequateIntakes[sex];
  const { linoleicG, alphaLinolenicG } = intakes.find(({ toAge }) => ageYears <= toAge) ?? intakes[0];
  return { linoleicG, alphaLinolenicG, epaDhaG: 0.25 };
}
