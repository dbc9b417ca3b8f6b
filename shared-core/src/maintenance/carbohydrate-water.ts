/**
 * Water and glycogen that a change of carbohydrate and sodium moves. Hall KD et al. Lancet 2011;378:826–837, web-appendix,
 * equations 1 and 2 (the second second-hand): ρG·dG/dt = CI − kG·G² and [Na]·dECF/dt = ΔNa − ξNa·ΔECF − ξCI·(1 − CI/CIb).
 */
const glycogenStartKg = 0.5;
const waterPerGlycogen = 2.7;
const glycogenKcalPerKg = 17_600 / 4.184;
const sodiumMgPerL = 3220;
const sodiumClearance = 3000;
const sodiumFromCarbohydrate = 4000;

/** Under this baseline the ratio to it says nothing any more, g/d; the most that ratio counts as (common practice, no source). */
const leastBaselineG = 100;
const mostRatio = 4;

export interface WaterStores {
  glycogenKg: number;
  extracellularKg: number;
  baselineG: number;
}

/** Stores in balance with the habitual grams of carbohydrate a day. */
export function restingStores(habitualG: number): WaterStores {
  return { glycogenKg: glycogenStartKg, extracellularKg: 0, baselineG: Math.max(leastBaselineG, habitualG) };
}

/** Moves the stores one day on, in place: carbohydrate of the day in grams, sodium above the habitual in milligrams. */
export function feedStores(stores: WaterStores, carbohydrateG: number, sodiumMg: number): void {
  const baselineKcal = 4 * stores.baselineG;
  const ratio = Math.min(mostRatio, carbohydrateG / stores.baselineG);
  const loss = baselineKcal / glycogenStartKg ** 2;
  const steps = 8;
  for (let step = 0; step < steps; step++) {
    const stored = (ratio * baselineKcal - loss * stores.glycogenKg ** 2) / glycogenKcalPerKg;
    stores.glycogenKg = Math.max(0.01, stores.glycogenKg + stored / steps);
  }
  const restKg = (sodiumMg - sodiumFromCarbohydrate * (1 - ratio)) / sodiumClearance;
  stores.extracellularKg =
    restKg + (stores.extracellularKg - restKg) * Math.exp(-sodiumClearance / sodiumMgPerL);
}

/** Mass of water and glycogen against the habitual, kg. */
export function storedKg(stores: WaterStores): number {
  return (1 + waterPerGlycogen) * (stores.glycogenKg - glycogenStartKg) + stores.extracellularKg;
}
