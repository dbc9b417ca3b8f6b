import { gramsPer } from '../units/mass.ts';
import { roundTo } from '../units/round.ts';
import type { DayTargets } from './types.ts';

/** Protein in g per kg of body mass a day: the rate of the practice and the range of the evidence. */
export const proteinRates = {
  /** 1.5 g per lb; common practice, no source. */
  practice: (1.5 * gramsPer.kg) / gramsPer.lb,
  /** Morton et al. 2018, breakpoint 1.62 with a 95 % interval up to 2.20; Iraki et al. 2019, 1.6 to 2.2. */
  evidenceLow: 1.6,
  evidenceHigh: 2.2,
} as const;

/** Protein before a contest, g per kg of lean mass a day: Helms et al. 2014, 2.3 to 3.1. */
export const contestRates = { low: 2.3, high: 3.1 } as const;

/** Protein in g per kg of body mass at one meal. */
export const perMealRates = {
  /** Schoenfeld & Aragon 2018: 0.4 over at least four meals. */
  full: 0.4,
  /** ISSN (Jäger et al. 2017): 0.25, or 20 to 40 g. */
  least: 0.25,
} as const;

/** The day's protein for a body mass in kg at a rate in g/kg: whole grams, so that the meals add up to what is shown. */
export function proteinTargets(bodyMassKg: number, gPerKg: number, meals: number): DayTargets['protein'] {
  const quotaG = roundTo(bodyMassKg * gPerKg, 1);
  return {
    quotaG,
    gPerKg,
    evidenceLowG: roundTo(bodyMassKg * proteinRates.evidenceLow, 1),
    evidenceHighG: roundTo(bodyMassKg * proteinRates.evidenceHigh, 1),
    perMealMinimumG: perMealMinimum(bodyMassKg, quotaG, meals),
  };
}

/**
 * What each meal should reach, g: the larger of the two published rates that the quota can pay for, else an even share.
 * The quota is in whole grams, so it may lie half a gram under the rate that it was made of, and still pays for it.
 */
function perMealMinimum(bodyMassKg: number, quotaG: number, meals: number): number {
  const reached = [perMealRates.full, perMealRates.least].find(
    (rate) => meals * rate * bodyMassKg <= quotaG + 0.5,
  );
  return reached === undefined ? quotaG / meals : bodyMassKg * reached;
}
