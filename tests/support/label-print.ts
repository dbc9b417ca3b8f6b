import { roundTo } from '@platewright/core/units/round.ts';

/** Energy as a US label prints it, kcal. 21 CFR 101.9(c)(1): below 5 is 0, to 50 the nearest 5, above the nearest 10. */
export function usLabelEnergy(kcal: number): number {
  if (kcal < 5) return 0;
  return roundTo(kcal, kcal <= 50 ? 5 : 10);
}

/** Fat or saturates as a US label prints them, g. 21 CFR 101.9(c)(2): below 0.5 is 0, below 5 the nearest 0.5, then 1. */
export function usLabelFat(grams: number): number {
  if (grams < 0.5) return 0;
  return roundTo(grams, grams < 5 ? 0.5 : 1);
}

/**
 * Protein, carbohydrate, fibre or sugars as a US label prints them, g. 21 CFR 101.9(c)(6) and (7): below 0.5 is 0, else
 * the nearest 1; `less than 1 g` is taken as 1.
 */
export function usLabelGrams(grams: number): number {
  return grams < 0.5 ? 0 : roundTo(grams, 1);
}

/** Sodium as a US label prints it, mg. 21 CFR 101.9(c)(4): below 5 is 0, to 140 the nearest 5, above the nearest 10. */
export function usLabelSodium(mg: number): number {
  if (mg < 5) return 0;
  return roundTo(mg, mg <= 140 ? 5 : 10);
}

/**
 * Fat, carbohydrate, sugars, protein or fibre as an EU label prints them, g. Commission guidance on tolerances, December
 * 2012, table 4 (figures from memory): to 0.5 is 0, below 10 the nearest 0.1, then the nearest 1.
 */
export function euLabelGrams(grams: number): number {
  if (grams <= 0.5) return 0;
  return roundTo(grams, grams < 10 ? 0.1 : 1);
}

/** What a label under EU law declares, in grams. Carbohydrate excludes fibre and includes polyols. */
interface EuEnergySources {
  proteinG: number;
  /** Available carbohydrate: polyols included, fibre excluded. */
  carbohydrateG: number;
  fatG: number;
  fibreG?: number;
  /** Part of the carbohydrate that is polyols. */
  polyolsG?: number;
  alcoholG?: number;
}

/**
 * Energy by Regulation (EU) 1169/2011, Annex XIV. kcal and kJ have their own factors there and are not
 * 4.184 multiples of each other, so both are summed from the components.
 */
export function euEnergy(grams: EuEnergySources): { kcal: number; kJ: number } {
  const fibre = grams.fibreG ?? 0;
  const polyols = grams.polyolsG ?? 0;
  const alcohol = grams.alcoholG ?? 0;
  const sugarsAndStarch = grams.carbohydrateG - polyols;
  return {
    kcal: 4 * (grams.proteinG + sugarsAndStarch) + 9 * grams.fatG + 2 * fibre + 2.4 * polyols + 7 * alcohol,
    kJ: 17 * (grams.proteinG + sugarsAndStarch) + 37 * grams.fatG + 8 * fibre + 10 * polyols + 29 * alcohol,
  };
}
