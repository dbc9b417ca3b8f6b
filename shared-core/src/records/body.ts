import * as z from 'zod/mini';
import { limits } from './limits.ts';
import { dateSchema } from './scalars.ts';

export const tapeSiteSchema = z.enum(['waist', 'hip', 'neck', 'chest', 'upper arm', 'thigh', 'calf']);

export const tapeSchema = z.object({
  date: dateSchema,
  site: tapeSiteSchema,
  cm: z.number().check(z.minimum(limits.tapeCm.least), z.maximum(limits.tapeCm.most)),
  removed: z.optional(z.boolean()),
});

/** The published methods that turn skinfolds into body fat. */
const caliperMethodSchema = z.enum(['jackson-pollock 3', 'jackson-pollock 7', 'durnin-womersley']);

const foldSiteSchema = z.enum([
  'chest',
  'axilla',
  'triceps',
  'biceps',
  'subscapular',
  'abdomen',
  'suprailiac',
  'thigh',
]);

/** One skinfold in mm. */
const foldSchema = z.number().check(z.minimum(limits.foldMm.least), z.maximum(limits.foldMm.most));

/** Skinfolds of one date, each in mm. Which ones a method asks for depends on the athlete's sex. */
export const calipersSchema = z.object({
  date: dateSchema,
  method: caliperMethodSchema,
  folds: z.partialRecord(foldSiteSchema, foldSchema),
  removed: z.optional(z.boolean()),
});

/** The first day of a cycle. Id `cycle-YYYY-MM-DD`, so that two devices speak of the same one. */
export const cycleStartSchema = z.object({
  date: dateSchema,
  removed: z.optional(z.boolean()),
});

const shiftCauseSchema = z.enum(['another scale', 'creatine']);

/**
 * What moves the readings of the scale from a date on without being tissue: what the scale shows then is no pace. Id
 * `shift-creatine-YYYY-MM-DD`, so that two devices speak of the same one; two causes of one date stand side by side.
 */
export const scaleShiftSchema = z.object({
  date: dateSchema,
  cause: shiftCauseSchema,
  removed: z.optional(z.boolean()),
});

export type TapeSite = z.infer<typeof tapeSiteSchema>;
export type CaliperMethod = z.infer<typeof caliperMethodSchema>;
export type FoldSite = z.infer<typeof foldSiteSchema>;
export type ShiftCause = z.infer<typeof shiftCauseSchema>;
