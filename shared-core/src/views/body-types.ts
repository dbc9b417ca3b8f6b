import type { Aim, EarlierCall } from '../call/input.ts';
import type { Estimate, Interval, LinePoint, Pace, Verdict } from '../call/output.ts';
import type { TapeSite } from '../records/entry.ts';
import type { Units } from './types.ts';

/** What the Body page shows: weigh-ins, the bodyweight line with its interval, tape, calls as flags, the aim as a wedge. */
export interface BodyView {
  athlete: string;
  date: string;
  units: Units;
  aim: Aim;
  bodyMassInForceKg: number;
  /** Every date from the first weigh-in to `date`, oldest first; empty when there is no weigh-in. */
  points: readonly BodyPoint[];
  /** Pace of the last 14 days; null while there is too little to say. */
  pace: Pace | null;
  /** Change of the line over the last 30 days, kg. */
  monthKg: Estimate | null;
  /** Sites in use, each oldest first. */
  tape: readonly { site: TapeSite; readings: readonly { id: string; date: string; cm: number }[] }[];
  fat: FatEstimate | null;
  leanShare: LeanShareView | null;
  /** Decisions on weekly calls, oldest first. */
  flags: readonly { date: string; verdict: Verdict; decision: EarlierCall['decision']; markG: number }[];
  wedge: PaceWedge | null;
}

export interface BodyPoint {
  date: string;
  weighIns: readonly { id: string; kg: number; note: string | null }[];
  /** Mean and 90 % interval of the bodyweight line. */
  lineKg: Estimate;
  /** Whether the weigh-in counted in full, in part, or was set aside as odd. */
  used: LinePoint['weighIn'];
}

/** Body fat in % of body mass with the standard error its method was published with. */
export interface FatEstimate {
  percent: number;
  errorPercent: number;
  /** How it was found, with the source. */
  method: string;
  /** Date of the tape; null when the athlete gave a measured value at set-up. */
  date: string | null;
}

/** The part of a change of body mass that is lean, 0 to 1. */
export interface LeanShareView {
  share: number;
  interval90: Interval | null;
  words: string;
}

/** Where body mass goes when the pace stays in the band: straight lines from a point of the bodyweight line. */
export interface PaceWedge {
  from: string;
  fromKg: number;
  to: string;
  lowKg: number;
  aimKg: number;
  highKg: number;
}
