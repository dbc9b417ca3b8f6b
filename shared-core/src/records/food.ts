import * as z from 'zod/mini';
import { mostEntryG, mostPortions } from './limits.ts';
import { nutrientsSchema } from './nutrients.ts';
import { idSchema, nameSchema } from './scalars.ts';

/** A household measure of a food and its grams: `large` = 50 g. */
const portionSchema = z.object({
  name: z.string().check(z.minLength(1), z.maxLength(40)),
  grams: z.number().check(z.positive(), z.maximum(mostEntryG)),
});

export const foodStateSchema = z.enum(['raw', 'cooked', 'dry', 'canned', 'as eaten']);

/** One row of the larder. Nutrients are per 100 g. */
export const foodSchema = z.object({
  name: nameSchema,
  /** Other words an athlete types for it, lower case. */
  aliases: z.array(z.string().check(z.minLength(1), z.maxLength(60))),
  state: foodStateSchema,
  per100: nutrientsSchema,
  portions: z.array(portionSchema).check(z.maxLength(mostPortions)),
  /** Quick carbohydrate belongs around training, complex elsewhere (common practice, no source). */
  carbohydrate: z.optional(z.enum(['quick', 'complex'])),
  /** USDA SR number of a starter food. */
  ndb: z.optional(z.string().check(z.regex(/^\d{5}$/))),
  /** Kept but not offered. */
  hidden: z.optional(z.boolean()),
  removed: z.optional(z.boolean()),
});

/** A saved meal, logged whole in one step. */
export const standingMealSchema = z.object({
  name: nameSchema,
  items: z
    .array(z.object({ food: idSchema, grams: z.number().check(z.nonnegative(), z.maximum(mostEntryG)) }))
    .check(z.minLength(1), z.maxLength(40)),
  removed: z.optional(z.boolean()),
});

export type Portion = z.infer<typeof portionSchema>;
export type FoodState = z.infer<typeof foodStateSchema>;
