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
 * 21 CFR 101.9(c)(1)(i)(B). The factor for alcohol is from memory.
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

/** What a label under EU law declares, in grams. Carbohydrate excludes fibre and includes polyols. */
export interface EuEnergySources {
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
