import { at } from './at.ts';

/** A day as the model reads it. */
export interface ModelDay {
  /** ISO date, the athlete's own. */
  day: string;
  weightKg: number | null;
  intake: DayIntake | null;
  /** What the targets asked for on that day; null before there were any. */
  prescribed: DayGrams | null;
}

export interface DayGrams {
  proteinG: number;
  carbohydrateG: number;
  fatG: number;
}

export interface DayIntake extends DayGrams {
  alcoholG?: number;
  sodiumMg?: number;
  /** Whether everything eaten that day is in the log. */
  complete: boolean;
  /** Whether next to every meal is in it: a log too small to be taken as complete may then still be all that was eaten. */
  everyMeal?: boolean;
}

/** What moves the readings of the scale from a day on without being tissue. */
export interface ToldShift {
  /** ISO date. */
  day: string;
  cause: 'another scale' | 'creatine';
}

/** What is recorded beside the days. */
export interface Beside {
  /** First days of a cycle, ISO dates. */
  cycleStarts?: readonly string[];
  /** Waist by the tape. */
  waist?: readonly { day: string; cm: number }[];
  /** What the athlete says moved the readings. */
  shifts?: readonly ToldShift[];
}

/** Every date from the first to the last, in columns. NaN where there is nothing. */
export interface DayTable {
  count: number;
  /** Days since 1970-01-01 of row 0. */
  firstDay: number;
  weightKg: Float64Array;
  /** What was eaten as far as known, in units of the log, kcal; and the variance of that for the model. */
  energyKcal: Float64Array;
  energyVar: Float64Array;
  /** Logged in full, kcal. */
  loggedKcal: Float64Array;
  /** The same, and of days with next to every meal in a log too small to be taken as complete. */
  everyMealKcal: Float64Array;
  prescribedKcal: Float64Array;
  /** Waist by the tape, cm. */
  waistCm: Float64Array;
  /** Water and glycogen known from carbohydrate and sodium, against the first week, kg. */
  knownWaterKg: Float64Array;
  /** How far the scale's zero may have moved from this morning on: variance, kg²; 0 where it did not. */
  shiftVar: Float64Array;
  /** 1 when the day is in a stretch without a log that was most likely eaten unlike the plan. */
  unlikePlan: Uint8Array;
  /** 1 when the day has a log that is not complete. */
  partial: Uint8Array;
  /** Places of the cycle, 0 when none is recorded. */
  cycleCos: Float64Array;
  cycleSin: Float64Array;
  /** Stores after the last day, for a look ahead. */
  stores: { glycogenKg: number; extracellularKg: number; baselineG: number };
  /** Finest step of the readings, kg. */
  resolutionKg: number;
}

/** Whether a row has a number in this column. */
export function has(column: Float64Array, row: number): boolean {
  return !Number.isNaN(at(column, row));
}
