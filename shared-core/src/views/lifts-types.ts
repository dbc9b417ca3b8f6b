import type { NextMark } from '../lifts/next-mark.ts';
import type { Estimate } from '../trend/estimate.ts';
import type { Units } from '../units/reader.ts';

/** What the Lifts page shows: the lifts that are tracked, key lifts first, each with its sets and where it is heading. */
export interface LiftsView {
  athlete: string;
  date: string;
  units: Units;
  lifts: readonly LiftView[];
}

export interface LiftView {
  id: string;
  name: string;
  /** Whether the weekly call looks at it. */
  key: boolean;
  smallestStepKg: number;
  /** Newest first. */
  sets: readonly SetView[];
  /** Null until there is a set that one can be told from. */
  repMax: RepMaxNow | null;
  /** Null while the last twelve weeks have too few sessions. */
  trend: RepMaxTrendView | null;
  /** Best rep max of each date of the last half year, oldest first. */
  points: readonly { date: string; kg: number }[];
  /** Null without a set. */
  nextMark: NextMark | null;
}

export interface SetView {
  id: string;
  date: string;
  loadKg: number;
  repetitions: number;
}

/** Most weight for one repetition, kg. */
export interface RepMaxNow {
  kg: Estimate;
  /** The best set of the newest session, from which the error is told; the mean too where there is no trend. */
  of: SetView;
}

export interface RepMaxTrendView {
  /** Dates with a set that counted. */
  sessions: number;
  /** Change in % of the rep max a month. */
  percentPerMonth: Estimate;
  /** The line over the sessions, kg, with the interval of its slope. */
  line: readonly { date: string; kg: Estimate }[];
}
