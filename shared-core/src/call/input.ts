import type { DayGrams, ModelDay, ToldShift } from '../maintenance/day-table.ts';
import type { Person } from '../maintenance/start-estimate.ts';

/** What the weekly call looks at. All of it comes from records; nothing here reads a clock. */
export interface CallInput {
  /** Body fat is estimated from height, mass and age when it was not measured. */
  athlete: Person & {
    /** Body fat as calipers or tape told it last, %: cautions go by it, where there is one. */
    newestFatPercent?: number;
    /** What training and cardio cost above rest on an average day, kcal; taken as 0 when absent. */
    exerciseKcal?: number;
    /** What the athlete stated at set-up; some of it keeps a mark from going down. */
    stated?: readonly ('kidney' | 'pregnancy' | 'eating-disorder' | 'diabetes')[];
  };
  aim: Aim;
  targets: TargetsInForce;
  /** Oldest first, one per date at most, gaps allowed. The last one is the day of the call. */
  days: readonly ModelDay[];
  waist: readonly { day: string; cm: number }[];
  keyLifts: readonly { day: string; lift: string; loadKg: number; repetitions: number }[];
  /** Oldest first. */
  calls: readonly EarlierCall[];
  /** ISO dates on which a cycle began, for women who record it; days of water are then no surprise. */
  cycleStarts?: readonly string[];
  /** What the athlete says moved the readings without being tissue, in any order. */
  shifts?: readonly ToldShift[];
}

export interface Aim {
  phase: 'off-season' | 'hold' | 'pre-contest';
  /** Change of body mass in % of body mass a week; negative in pre-contest. */
  pacePercentPerWeek: number;
  /** Signed like the pace: low < high. */
  band: { low: number; high: number };
  /** ISO date since when this aim is in force; days before it were eaten for another aim. */
  since?: string;
}

export interface TargetsInForce extends DayGrams {
  /** Grams of fat a day not to go under. */
  fatFloorG: number;
  /** Low and high grams a day derived from the protein quota: orientation, not a guard. */
  carbohydrateBand: { lowG: number; highG: number };
}

export interface EarlierCall {
  /** ISO date on which it was decided. */
  day: string;
  decision: 'accepted' | 'changed' | 'declined';
  /** The mark the call proposed. */
  proposedG: number;
  /** The mark in force after the decision. */
  inForceG: number;
}
