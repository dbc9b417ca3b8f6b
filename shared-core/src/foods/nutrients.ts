import * as z from 'zod/mini';
import { type Nutrients, nutrientsSchema } from '../records/nutrients.ts';

type NutrientKey = keyof Nutrients;

/** An amount of a food: grams of something with these nutrients per 100 g. */
export interface Portioned {
  per100: Nutrients;
  grams: number;
}

export interface NutrientSum {
  /** Sum of what was reported; 0 where nothing was. */
  known: Record<NutrientKey, number>;
  /** Nutrients that some of the foods do not report: their true sum is `known` or more. */
  partly: readonly NutrientKey[];
}

const keys = z.keyof(nutrientsSchema).options;

/**
 * Sum over foods eaten. A nutrient that a food does not report is left out of the sum and named in `partly`. Alcohol is
 * the exception: tables and labels name it only where there is some, so its absence counts as none. `begun` is the sum
 * of the foods before these.
 */
export function sumNutrients(items: readonly Portioned[], begun?: NutrientSum): NutrientSum {
  const known: Record<NutrientKey, number> = {
    energyKcal: 0,
    proteinG: 0,
    carbohydrateG: 0,
    fatG: 0,
    fibreG: 0,
    sugarsG: 0,
    saturatesG: 0,
    linoleicG: 0,
    alphaLinolenicG: 0,
    epaDhaG: 0,
    leucineG: 0,
    sodiumMg: 0,
    alcoholG: 0,
    ...begun?.known,
  };
  const partly = new Set<NutrientKey>(begun?.partly);
  for (const { per100, grams } of items) {
    for (const key of keys) {
      const value = per100[key];
      if (value !== undefined) known[key] += (value * grams) / 100;
      else if (key !== 'alcoholG' && grams > 0) partly.add(key);
    }
  }
  return { known, partly: keys.filter((key) => partly.has(key)) };
}
