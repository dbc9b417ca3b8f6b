import type * as z from 'zod/mini';
import { athleteSchema, phaseSchema } from './athlete.ts';
import { calipersSchema, cycleStartSchema, scaleShiftSchema, tapeSchema } from './body.ts';
import {
  dayLogSchema,
  entrySchema,
  liftSchema,
  liftSetSchema,
  weeklyCallSchema,
  weighInSchema,
} from './entry.ts';
import { foodSchema, standingMealSchema } from './food.ts';
import { photoSchema } from './photo.ts';

/** Every kind of record with the schema of its fields: the one truth for wire, store, form and export. */
export const kinds = {
  athlete: athleteSchema,
  phase: phaseSchema,
  food: foodSchema,
  'standing-meal': standingMealSchema,
  entry: entrySchema,
  day: dayLogSchema,
  'weigh-in': weighInSchema,
  tape: tapeSchema,
  calipers: calipersSchema,
  'cycle-start': cycleStartSchema,
  'scale-shift': scaleShiftSchema,
  photo: photoSchema,
  lift: liftSchema,
  'lift-set': liftSetSchema,
  'weekly-call': weeklyCallSchema,
} as const;

export type Kind = keyof typeof kinds;
export type FieldsOf<K extends Kind> = z.infer<(typeof kinds)[K]>;

/** A whole, valid record of a kind. */
export type RecordOf<K extends Kind> = FieldsOf<K> & { id: string; athlete: string };

export type Athlete = RecordOf<'athlete'>;
export type Phase = RecordOf<'phase'>;
export type Food = RecordOf<'food'>;
export type StandingMeal = RecordOf<'standing-meal'>;
export type Entry = RecordOf<'entry'>;
export type DayLog = RecordOf<'day'>;
export type WeighIn = RecordOf<'weigh-in'>;
export type Tape = RecordOf<'tape'>;
export type Calipers = RecordOf<'calipers'>;
export type CycleStart = RecordOf<'cycle-start'>;
export type ScaleShift = RecordOf<'scale-shift'>;
export type Photo = RecordOf<'photo'>;
export type Lift = RecordOf<'lift'>;
export type LiftSet = RecordOf<'lift-set'>;
export type WeeklyCallRecord = RecordOf<'weekly-call'>;

export function isKind(text: string): text is Kind {
  return Object.hasOwn(kinds, text);
}
