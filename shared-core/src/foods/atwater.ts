/** Energy-yielding components in grams. Carbohydrate is total carbohydrate by difference, fibre included. */
export interface EnergySources {
  proteinG: number;
  carbohydrateG: number;
  fatG: number;
  alcoholG?: number;
}

/** kcal that a gram of each counts for. */
export interface EnergyFactors {
  protein: number;
  carbohydrate: number;
  fat: number;
  alcohol: number;
}

/**
 * General Atwater factors in kcal per gram. Merrill & Watt 1973, USDA Agriculture Handbook 74;
 * 21 CFR 101.9(c)(1)(i)(B). The factor for alcohol: Regulation (EU) 1169/2011, Annex XIV.
 */
export const generalFactors: EnergyFactors = { protein: 4, carbohydrate: 4, fat: 9, alcohol: 7 };

/**
 * The least that a gram counts for by a specific factor, kcal: protein and carbohydrate of bran, fat of plants. Merrill &
 * Watt 1973, table 13, as the USDA table stores them (NDB 20033); alcohol from the documentation of its release 28.
 */
export const lowestSpecificFactors: EnergyFactors = {
  protein: 1.82,
  carbohydrate: 2.35,
  fat: 8.37,
  alcohol: 6.93,
};

/** Energy in kcal of the given grams: by the general Atwater factors 4, 4, 9 and 7 kcal/g, or by a food’s specific ones. */
export function energyKcal(grams: EnergySources, factors: EnergyFactors = generalFactors): number {
  return (
    factors.protein * grams.proteinG +
    factors.carbohydrate * grams.carbohydrateG +
    factors.fat * grams.fatG +
    factors.alcohol * (grams.alcoholG ?? 0)
  );
}
