import * as z from 'zod/mini';
import { limits, mostEntryG } from './limits.ts';
import { nutrientsSchema } from './nutrients.ts';
import { dateSchema, idSchema, instantSchema, markSchema, nameSchema, noteSchema } from './scalars.ts';

/** One food eaten at a meal of a date. `per100` is a copy, so a later edit of the larder never rewrites the past. */
export const entrySchema = z.object({
  date: dateSchema,
  meal: z.int().check(z.minimum(1), z.maximum(8)),
  food: idSchema,
  name: nameSchema,
  grams: z.number().check(z.positive(), z.maximum(mostEntryG)),
  /** How it was typed, when not in grams: `2 large`. */
  amount: z.optional(z.string().check(z.maxLength(60))),
  per100: nutrientsSchema,
  at: instantSchema,
  removed: z.optional(z.boolean()),
});

/** What the athlete says about a whole date. Id `day-YYYY-MM-DD`, so that two devices speak of the same one. */
export const dayLogSchema = z.object({
  date: dateSchema,
  /** Everything eaten is in the log (true) or is known not to be (false). */
  complete: z.optional(z.boolean()),
  note: z.optional(noteSchema),
  removed: z.optional(z.boolean()),
});

export const weighInSchema = z.object({
  date: dateSchema,
  kg: z.number().check(z.minimum(limits.weighInKg.least), z.maximum(limits.weighInKg.most)),
  at: instantSchema,
  note: z.optional(noteSchema),
  removed: z.optional(z.boolean()),
});

/** A lift that is tracked: its name and the smallest step of the bar. */
export const liftSchema = z.object({
  name: nameSchema,
  key: z.boolean(),
  smallestStepKg: z.number().check(z.positive(), z.maximum(limits.loadKg.most)),
  removed: z.optional(z.boolean()),
});

export const liftSetSchema = z.object({
  date: dateSchema,
  lift: idSchema,
  loadKg: z.number().check(z.minimum(limits.loadKg.least), z.maximum(limits.loadKg.most)),
  repetitions: z.int().check(z.minimum(limits.repetitions.least), z.maximum(limits.repetitions.most)),
  removed: z.optional(z.boolean()),
});

/**
 * The decision on one weekly call. Id `call-YYYY-MM-DD` of the date decided. `markG` is in force from `date` on, and so
 * is `bodyMassKg`, the bodyweight line of that date: body mass in force never follows one noisy weigh-in.
 */
export const weeklyCallSchema = z.object({
  date: dateSchema,
  verdict: z.enum(['up', 'down', 'hold', 'not-enough']),
  decision: z.enum(['accepted', 'changed', 'declined']),
  proposedG: markSchema,
  markG: markSchema,
  bodyMassKg: z.number().check(z.positive(), z.maximum(limits.weighInKg.most)),
  /** The two sentences shown when it was decided. */
  summary: z.string().check(z.maxLength(1000)),
  at: instantSchema,
  removed: z.optional(z.boolean()),
});
