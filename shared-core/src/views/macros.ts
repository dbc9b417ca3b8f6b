import { type NutrientSum, type Portioned, sumNutrients } from '../foods/nutrients.ts';
import type { Macros } from './types.ts';

/** The four numbers that every row shows. */
export function macrosOf({ known }: Pick<NutrientSum, 'known'>): Macros {
  const { energyKcal, proteinG, carbohydrateG, fatG } = known;
  return { energyKcal, proteinG, carbohydrateG, fatG };
}

/** Energy in kcal and grams of the macronutrients of foods. */
export function sumMacros(items: readonly Portioned[]): Macros {
  return macrosOf(sumNutrients(items));
}
