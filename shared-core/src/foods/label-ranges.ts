import type { Portion } from '../records/food.ts';
import type { Nutrients } from '../records/nutrients.ts';
import { type EnergyFactors, energyKcal, generalFactors, lowestSpecificFactors } from './atwater.ts';
import { energyBehind, fatBehind, gramsBehind, type Range } from './label-rounding.ts';

/** A food with its figures as declared, per 100 g. A food from the USDA table has an NDB number. */
export interface Labelled {
  per100: Nutrients;
  portions: readonly Portion[];
  ndb?: string | undefined;
}

/** Below this a portion is a crumb, such as one almond, and no label is written for it. */
const SMALLEST_SERVING_G = 10;

/** Per 100 g, what may truly be there if the label was printed for one certain serving. */
interface Behind {
  energy: Range;
  protein: Range;
  carbohydrate: Range;
  fat: Range;
  fibre: Range;
  alcoholG: number;
}

/**
 * The kcal per 100 g that a food’s grams account for by any permitted method, rounding of all figures included. Fibre may
 * count 4, 2 or 0 kcal/g within the carbohydrate (21 CFR 101.9(c)(1)(i)) or 2 on top of it (Regulation (EU) 1169/2011,
 * where carbohydrate excludes fibre); energies in the USDA table use specific factors.
 */
export function accountedEnergy(food: Labelled): Range {
  const leastFactors = food.ndb === undefined ? generalFactors : lowestSpecificFactors;
  const ranges = behindLabel(food).map((behind) => energyOf(food.per100.energyKcal, behind, leastFactors));
  return {
    low: Math.min(...ranges.map((range) => range.low)),
    high: Math.max(...ranges.map((range) => range.high)),
  };
}

/** The least mass in g that protein, carbohydrate, fat and alcohol have together in 100 g, rounding taken off. */
export function leastMass(food: Labelled): number {
  return Math.min(
    ...behindLabel(food).map((b) => b.protein.low + b.carbohydrate.low + b.fat.low + b.alcoholG),
  );
}

/** Labels are printed for 100 g or for a portion; the smallest portion leaves the most room for rounding. */
function behindLabel({ per100, portions }: Labelled): Behind[] {
  const labelled = portions.map((portion) => portion.grams).filter((grams) => grams >= SMALLEST_SERVING_G);
  const servings = labelled.length === 0 ? [100] : [100, Math.min(...labelled)];
  return servings.map((servingG) => behindServing(per100, servingG));
}

function behindServing(per100: Nutrients, servingG: number): Behind {
  const unrounded = (value: number, behind: (printed: number) => Range): Range => {
    // Scaling to 100 g and back leaves binary dust that would turn a printed 0.5 into something else.
    const printed = Math.round(value * servingG * 1e4) / 1e6;
    const { low, high } = behind(printed);
    return { low: (low * 100) / servingG, high: (high * 100) / servingG };
  };
  return {
    energy: unrounded(per100.energyKcal, energyBehind),
    protein: unrounded(per100.proteinG, gramsBehind),
    carbohydrate: unrounded(per100.carbohydrateG, gramsBehind),
    fat: unrounded(per100.fatG, fatBehind),
    fibre: per100.fibreG === undefined ? { low: 0, high: 0 } : unrounded(per100.fibreG, gramsBehind),
    alcoholG: per100.alcoholG ?? 0,
  };
}

function energyOf(declared: number, behind: Behind, leastFactors: EnergyFactors): Range {
  const { energy, protein, carbohydrate, fat, fibre, alcoholG } = behind;
  const digestible = Math.max(0, carbohydrate.low - fibre.high);
  const least = { proteinG: protein.low, carbohydrateG: digestible, fatG: fat.low, alcoholG };
  const most = { proteinG: protein.high, carbohydrateG: carbohydrate.high, fatG: fat.high, alcoholG };
  return {
    low: Math.max(0, energyKcal(least, leastFactors) - (energy.high - declared)),
    high: energyKcal(most) + 2 * fibre.high + (declared - energy.low),
  };
}
