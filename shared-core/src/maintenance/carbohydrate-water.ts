import { kJPerKcal } from '../units/energy.ts';

/**
 * Water and glycogen that a change of carbohydrate and sodium moves. Hall KD et al. Lancet 2011;378:826–837, web-appendix,
 * equations 1 and 2 (the second second-hand): ρG·dG/dt = CI − kG·G² and [Na]·dECF/dt = ΔNa − ξNa·ΔECF − ξCI·(1 − CI/CIb).
 * [Na] in mg/L, ξNa in mg/d for each litre, ξCI in mg/d.
 */
const glycogenStartKg = 0.5;
const waterPerGlycogen = 2.7;
const glycogenKcalPerKg = 17_600 / kJPerKcal;
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

/**
 * Moves the stores one day on, in place: carbohydrate of the day in grams, sodium above the habitual in milligrams. Both
 * equations are solved exactly for food that is spread evenly over the day.
 */
export function feedStores(stores: WaterStores, carbohydrateG: number, sodiumMg: number): void {
  const ratio = Math.min(mostRatio, carbohydrateG / stores.baselineG);
  // dG/dt = pace·(rest² − G²): G goes to rest as a hyperbolic tangent.
  const pace = (4 * stores.baselineG) / glycogenStartKg ** 2 / glycogenKcalPerKg;
  const rest = glycogenStartKg * Math.sqrt(ratio);
  const start = stores.glycogenKg;
  // tanh(pace·rest)/rest, and its limit where nothing is eaten.
  const way = rest > 0 ? Math.tanh(pace * rest) / rest : pace;
  stores.glycogenKg = (start + rest ** 2 * way) / (1 + start * way);
  const restKg = (sodiumMg - sodiumFromCarbohydrate * (1 - ratio)) / sodiumClearance;
  stores.extracellularKg =
    restKg + (stores.extracellularKg - restKg) * Math.exp(-sodiumClearance / sodiumMgPerL);
}

/** Mass of water and glycogen against the habitual, kg. */
export function storedKg(stores: WaterStores): number {
  return (1 + waterPerGlycogen) * (stores.glycogenKg - glycogenStartKg) + stores.extracellularKg;
}
