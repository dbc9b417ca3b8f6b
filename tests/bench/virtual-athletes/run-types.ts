import type { Aim, CallInput } from '@platewright/core/call/input.ts';

export interface Estimate {
  mean: number;
  low: number;
  high: number;
}

export interface Answer {
  verdict: string;
  carbohydrateG: number;
  /** % of body mass a week. */
  pace?: Estimate;
  /** Pace to expect at the mark in force on average eating, % a week. */
  expectedPace?: Estimate;
  maintenanceKcal?: Estimate;
}

/** What only an oracle sees at the call. */
interface Truth {
  /** The mark that would give this pace on average eating. */
  markForPace(pacePercent: number): number;
}

export type Controller = (input: CallInput, truth: Truth) => Answer;

/** One day as it really was, kept for the judge. */
interface TrueDay {
  tissueKg: number;
  fatKg: number;
  massKg: number;
  /** Pace the mark of the day would give on average eating, % a week. */
  dosePace: number;
  aim: Aim;
}

export interface TrueCall {
  /** Index of the last day before the call. */
  day: number;
  answer: Answer;
  markBeforeG: number;
  markAfterG: number;
  /** In the athlete's own units: what the log would read at maintenance. */
  maintenanceKcal: number;
  /** What the mark in force would give on average eating with today's body, % a week. */
  expectedPace: number;
  aim: Aim;
}

export interface Run {
  startTissueKg: number;
  days: TrueDay[];
  calls: TrueCall[];
}
