import type { Aim, EarlierCall } from '../call/input.ts';
import type { ForecastFan, Verdict, WeeklyCall } from '../call/output.ts';
import type { KindOfDay } from '../season/kind-of-day.ts';
import type { Units } from '../units/reader.ts';
import type { ContestAhead } from './contest.ts';
import type { Macros } from './types.ts';

/** What the Week page shows for a date: the weekly call with its evidence, and the days it rests on. */
export interface WeekView {
  athlete: string;
  date: string;
  units: Units;
  aim: Aim;
  contest: ContestAhead | null;
  /** What the athlete stated, to be read before a decision; one or two sentences each. */
  cautions: readonly string[];
  /** The call as computed from the records up to `date`, without the decision of `date`; null when there is nothing to go on. */
  call: WeeklyCall | null;
  /** Why there is no call and what to record, one sentence; null when there is one. */
  noCall: string | null;
  /** What is asked from the decision on when the call is accepted, which is what its forecast reckons with; null without a call. */
  planAfter: PlanAfter | null;
  /** Forecasts at marks around the one in force, lowest first, for a slider; empty when the call has no forecast. */
  whatIf: readonly ForecastFan[];
  /** The decision recorded for `date`. */
  decision: CallRow | null;
  /** Carbohydrate mark in force on `date`, grams a day, the decision of `date` included. */
  markInForceG: number;
  /** Of the body mass that the decision puts in force. */
  carbohydrateBand: { lowG: number; highG: number };
  /** Date from which the next call is to be decided: seven days after the last decision, one of `date` included. */
  dueOn: string;
  /** The last 28 dates, oldest first; the last one is `date`. */
  days: readonly WeekDayRow[];
  last7: DaysSummary;
  last28: DaysSummary;
  /** Decisions before `date`, newest first. */
  earlierCalls: readonly CallRow[];
}

export interface WeekDayRow {
  date: string;
  kindOfDay: KindOfDay;
  /** Median of the date's weigh-ins. */
  weightKg: number | null;
  /** Sum of the date's entries; null when nothing was logged. */
  intake: Macros | null;
  /** What the targets asked for. */
  prescribed: Macros;
  /** Whether everything eaten is in the log. */
  complete: boolean;
  /** True when the athlete said so, false when it was judged from the entries. */
  completeStated: boolean;
}

/** A day's plan with the body mass in kg that protein and fat follow. */
export interface PlanAfter extends Macros {
  bodyMassKg: number;
  /** At its mark, since the floor by share of energy rises with it. */
  fatFloorG: number;
}

/** Means over the dates that have data. */
export interface DaysSummary {
  weighIns: number;
  completeDates: number;
  weightKg: number | null;
  /** Over complete dates only. */
  intake: Macros | null;
  /** What was asked for on those same dates. */
  prescribed: Macros | null;
}

/** A decision on a weekly call. */
export interface CallRow {
  date: string;
  verdict: Verdict;
  decision: EarlierCall['decision'];
  proposedG: number;
  markG: number;
  bodyMassKg: number;
  summary: string;
}
