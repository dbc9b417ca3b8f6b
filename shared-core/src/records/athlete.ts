import * as z from 'zod/mini';
import { limits } from './limits.ts';
import { dateSchema, markSchema, nameSchema, timeOfDaySchema } from './scalars.ts';

/** Which dates are session days: fixed weekdays (1 = Monday … 7 = Sunday) or a cycle that repeats from a date. */
const trainingSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('weekdays'), days: z.array(z.int().check(z.minimum(1), z.maximum(7))) }),
  z.object({
    kind: z.literal('cycle'),
    start: dateSchema,
    days: z
      .array(z.enum(['session', 'recovery']))
      .check(z.minLength(limits.cycleDays.least), z.maxLength(limits.cycleDays.most)),
  }),
]);

/** What the tool must be careful with; each one shows a caution and defers to a professional. */
const cautionSchema = z.enum(['kidney', 'pregnancy', 'eating-disorder', 'diabetes']);

/** The person whose food and body are recorded. The record's id is the athlete's id. */
export const athleteSchema = z.object({
  name: nameSchema,
  sex: z.enum(['female', 'male']),
  birthYear: z.int().check(z.minimum(1900), z.maximum(2100)),
  heightCm: z.number().check(z.minimum(limits.heightCm.least), z.maximum(limits.heightCm.most)),
  /** Body mass at set-up, kg: in force until a weekly call brings a newer one. */
  startMassKg: z.number().check(z.minimum(25), z.maximum(350)),
  /** Body fat as measured at that body mass, %. */
  fatPercent: z.optional(
    z.number().check(z.minimum(limits.fatPercent.least), z.maximum(limits.fatPercent.most)),
  ),
  massUnit: z.enum(['kg', 'lb']),
  energyUnit: z.enum(['kcal', 'kJ']),
  /** IANA name. */
  timeZone: z.string().check(z.minLength(1), z.maxLength(64)),
  /** Hour at which the athlete's date changes. */
  rolloverHour: z.int().check(z.minimum(0), z.maximum(11)),
  meals: z.int().check(z.minimum(3), z.maximum(8)),
  wake: timeOfDaySchema,
  sleep: timeOfDaySchema,
  trainingTime: timeOfDaySchema,
  training: trainingSchema,
  /** Protein quota in g per kg of body mass in force. */
  proteinGPerKg: z.number().check(z.minimum(0.6), z.maximum(4.5)),
  /** Fat target in g per kg of body mass in force; the floor is derived, not set. */
  fatGPerKg: z.number().check(z.minimum(0.4), z.maximum(2.5)),
  cautions: z.array(cautionSchema),
  removed: z.optional(z.boolean()),
});

const phaseAimSchema = z.enum(['off-season', 'hold', 'pre-contest']);

/** A dated stretch with one aim; it lasts until the next phase starts. Paces in % of body mass a week, signed. */
export const phaseSchema = z.object({
  from: dateSchema,
  aim: phaseAimSchema,
  pacePercentPerWeek: z.number().check(z.minimum(-2), z.maximum(2)),
  bandLow: z.number().check(z.minimum(-2), z.maximum(2)),
  bandHigh: z.number().check(z.minimum(-2), z.maximum(2)),
  contestDate: z.optional(dateSchema),
  /** Starting carbohydrate mark in g a day; by the rule (1.75 × protein quota) when absent. */
  startMarkG: z.optional(markSchema),
  removed: z.optional(z.boolean()),
});

export type PhaseAim = z.infer<typeof phaseAimSchema>;
export type Training = z.infer<typeof trainingSchema>;
export type Caution = z.infer<typeof cautionSchema>;
