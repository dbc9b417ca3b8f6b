import * as z from 'zod/mini';
import { mostPer100 } from './limits.ts';

const upTo = (most: number) => z.number().check(z.nonnegative(), z.maximum(most));
const grams = upTo(mostPer100.g);

/**
 * Nutrients of a food, per 100 g of edible part. Masses in grams, sodium in milligrams, energy in kcal.
 * `carbohydrateG` is total carbohydrate by difference (fibre included), as in the USDA tables. A key that is absent
 * was not reported, which is not the same as zero.
 */
export const nutrientsSchema = z.object({
  energyKcal: upTo(mostPer100.kcal),
  proteinG: grams,
  carbohydrateG: grams,
  fatG: grams,
  fibreG: z.optional(grams),
  sugarsG: z.optional(grams),
  saturatesG: z.optional(grams),
  /** 18:2, linoleic acid. */
  linoleicG: z.optional(grams),
  /** 18:3 n-3, alpha-linolenic acid. */
  alphaLinolenicG: z.optional(grams),
  /** 20:5 n-3 and 22:6 n-3 together. */
  epaDhaG: z.optional(grams),
  leucineG: z.optional(grams),
  sodiumMg: z.optional(upTo(mostPer100.mg)),
  alcoholG: z.optional(grams),
});

export type Nutrients = z.infer<typeof nutrientsSchema>;
