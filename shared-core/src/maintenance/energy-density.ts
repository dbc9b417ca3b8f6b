import { kJPerKcal } from '../units/energy.ts';

/** Forbes constant, kg: dFFM/dFM = 10.4/FM. Forbes GB. Nutr Rev 1987;45:225; Hall KD. Br J Nutr 2007;97:1059. */
const forbesKg = 10.4;

/** Metabolisable energy of fat and of lean tissue, kcal/kg: 39.5 and 7.6 MJ/kg. Hall KD et al. Lancet 2011;378:826–837, equation 5 (second-hand). */
export const fatKcalPerKg = 39_500 / kJPerKcal;
export const leanKcalPerKg = 7_600 / kJPerKcal;

/** Share of a small change of body mass that is fat-free, from own fat mass in kg. Forbes GB. Ann N Y Acad Sci 2000;904:359–365. */
export function leanShareOfChange(fatKg: number): number {
  return forbesKg / (forbesKg + fatKg);
}

/**
 * Energy of a small change of tissue in kcal/kg, from own fat mass in kg, by the Forbes curve.
 * Hall KD. Int J Obes 2008;32:573–576. For lean people well under the rule of 7,716 kcal/kg.
 */
export function tissueKcalPerKg(fatKg: number): number {
  const lean = leanShareOfChange(fatKg);
  return (1 - lean) * fatKcalPerKg + lean * leanKcalPerKg;
}

/** Cost of laying down fat and lean tissue, kcal/kg: 750 and 960 kJ/kg. Hall KD et al. Lancet 2011, equation 6 (second-hand). */
const fatTurnoverKcalPerKg = 750 / kJPerKcal;
const leanTurnoverKcalPerKg = 960 / kJPerKcal;

/** Part of additional food that is burnt in handling it. Hall KD et al. Lancet 2011, equation 3 (second-hand). */
const foodEffect = 0.1;

/**
 * Kilograms of tissue a day for each kcal a day eaten above maintenance, from own fat mass in kg. Smaller than one over
 * `tissueKcalPerKg`, because food effect and the cost of turnover take their part.
 * From Hall KD et al. Lancet 2011, equations 3, 5 and 6.
 */
export function kgPerSurplusKcal(fatKg: number): number {
  const lean = leanShareOfChange(fatKg);
  const turnover = (1 - lean) * fatTurnoverKcalPerKg + lean * leanTurnoverKcalPerKg;
  return (1 - foodEffect) / (tissueKcalPerKg(fatKg) + turnover);
}

/** Energy to be eaten above maintenance for a kilogram of fat and of lean tissue, kcal. Same equations. */
export const eatenKcalPerKg = {
  fat: (fatKcalPerKg + fatTurnoverKcalPerKg) / (1 - foodEffect),
  lean: (leanKcalPerKg + leanTurnoverKcalPerKg) / (1 - foodEffect),
} as const;

/** Fat mass in kg after body mass moved from the reference, on the Forbes curve FFM = 10.4·ln(FM) + constant (this form from memory). */
export function fatAfter(fatKg: number, changeKg: number): number {
  let fat = Math.max(1, fatKg + changeKg * (1 - leanShareOfChange(fatKg)));
  for (let round = 0; round < 3; round++) {
    const miss = fat - fatKg + forbesKg * Math.log(fat / fatKg) - changeKg;
    fat = Math.max(1, fat - miss / (1 + forbesKg / fat));
  }
  return fat;
}
