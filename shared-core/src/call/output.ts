import type { Estimate, Interval } from '../trend/estimate.ts';

/** What the weekly call and the bodyweight line say. Numbers are unrounded unless a comment says otherwise. */

export type Verdict = 'up' | 'down' | 'hold' | 'not-enough';

export interface WeeklyCall {
  /** ISO date of the last day the call looked at. */
  day: string;
  verdict: Verdict;
  /** The carbohydrate mark proposed, grams a day, whole fives. The mark in force unless the verdict is up or down. */
  carbohydrateG: number;
  /** The mark in force when the call was made. */
  markInForceG: number;
  /** Null when there is no weigh-in at all. */
  pace: Pace | null;
  /** Null when there is no weigh-in at all. In units of the athlete's own log: what it shows on a day that holds mass. */
  maintenanceKcal: Estimate | null;
  /** What was in the model's hands, used or left out, with the reason; most important first. */
  evidence: EvidenceItem[];
  /** Two sentences that anyone understands. */
  summary: [string, string];
  /** Null when the verdict is not-enough and there is nothing to start from. */
  forecast: CallForecast | null;
  /** What would have made the call another one; most likely first. */
  wouldChange: WouldChange[];
  /** Shown before anything else when one has the level 'stop'. */
  cautions: Caution[];
  /** Filled, in order, when the mark stands low or at its own floor and the aim asks for less. The athlete picks. */
  nextLevers: NextLever[];
}

export interface Pace {
  /** Tissue only (water of carbohydrate and day-to-day water taken out), % of body mass a week, last 14 days. */
  meanPercentPerWeek: number;
  interval90: Interval;
  /** The same in kilograms a week. */
  meanKgPerWeek: number;
  /** Pace to expect in the next weeks at the mark in force on average eating, % a week. */
  expectedAtMark: Estimate;
  /** The band that the call judges by: the aim's, moved with an aim that is held back. low < high. */
  band: Interval;
  aimPercentPerWeek: number;
  /** Where the expected pace at the mark in force lies; the three add up to 1. */
  probabilityBelow: number;
  probabilityInside: number;
  probabilityAbove: number;
  /** Change of the scale over the last 14 days that is water of carbohydrate and salt, kilograms. */
  waterKg: Estimate;
}

export type EvidenceCode =
  | 'pace'
  | 'last-week'
  | 'maintenance'
  | 'water'
  | 'weigh-ins'
  | 'log'
  | 'eating'
  | 'maintenance-step'
  | 'odd-weigh-ins'
  | 'scale-shift'
  | 'waist'
  | 'lifts'
  | 'earlier-call'
  | 'energy-availability'
  | 'band';

export interface EvidenceItem {
  code: EvidenceCode;
  /** One or two plain sentences, numbers in them. */
  text: string;
  numbers: Record<string, number>;
  used: boolean;
  /** Why it was left out, or how it weighed. */
  why: string;
}

/** Four weeks ahead, day 0 is the day of the call. The body mass a scale would show on an average morning. */
export interface CallForecast {
  atNewMark: ForecastFan;
  atOldMark: ForecastFan;
}

export interface ForecastFan {
  markG: number;
  /** Expected pace of tissue in weeks 2 to 4, % a week. */
  pacePercentPerWeek: Estimate;
  /** 29 points, day 0 to 28. */
  points: ForecastPoint[];
}

interface ForecastPoint {
  /** ISO date. */
  day: string;
  massKg: Estimate;
}

type WouldChangeCode =
  | 'pace'
  | 'maintenance'
  | 'more-weigh-ins'
  | 'more-log'
  | 'eat-the-plan'
  | 'wait'
  | 'waist'
  | 'lifts'
  | 'floor'
  | 'energy-availability'
  | 'doctor';

export interface WouldChange {
  code: WouldChangeCode;
  text: string;
  numbers: Record<string, number>;
}

type CautionCode =
  | 'energy-availability-low'
  | 'energy-availability-guard'
  | 'fat-floor'
  | 'fast-loss'
  | 'low-body-mass'
  | 'very-low-intake'
  | 'unexplained-loss'
  | 'under-age'
  | 'pregnancy'
  | 'eating-disorder'
  | 'low-body-fat'
  | 'aim-held-back'
  | 'mark-at-floor'
  | 'mark-outside-band'
  | 'large-step'
  | 'probably-muscle'
  | 'waist-ahead-of-pace';

export interface Caution {
  code: CautionCode;
  /** note: good to know; warn: read before accepting; stop: nothing is moved down, see a professional. */
  level: 'note' | 'warn' | 'stop';
  text: string;
  numbers: Record<string, number>;
}

export interface NextLever {
  code: 'fat' | 'protein' | 'cardio' | 'pace' | 'date';
  text: string;
  /** Energy the lever can move, kcal a day, as a positive number. */
  kcalPerDay: number;
  numbers: Record<string, number>;
}

/** One day of the bodyweight line, every date from the first to the last with none left out. */
export interface LinePoint {
  /** ISO date. */
  day: string;
  /** What stood on the scale, null when there was no weigh-in. */
  weightKg: number | null;
  /** Smoothed body mass with day-to-day water taken out, in units of the scale of that day. */
  massKg: Estimate;
  /** The same without the water that carbohydrate and salt bind: tissue. Comparable over the whole line. */
  tissueKg: Estimate;
  /** Maintenance energy as known today for that day, kcal in units of the athlete's log. */
  maintenanceKcal: Estimate;
  /** Whether the weigh-in counted in full, in part, or was set aside as odd. */
  weighIn: 'none' | 'used' | 'part' | 'odd';
}
