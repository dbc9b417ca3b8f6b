import type { EarlierCall } from '../call/input.ts';
import type { LinePoint, Pace, Verdict } from '../call/output.ts';
import type { Person } from '../maintenance/start-estimate.ts';
import type { CaliperMethod, ShiftCause, TapeSite } from '../records/body.ts';
import type { Estimate } from '../trend/estimate.ts';
import type { Units } from '../units/reader.ts';

/** What the Body page shows: weigh-ins, the bodyweight line with its interval, tape, calls as flags, the aim as a wedge. */
export interface BodyView {
  athlete: string;
  date: string;
  units: Units;
  /** What the equations of body fat ask for. */
  person: Pick<Person, 'sex' | 'ageYears'>;
  bodyMassInForceKg: number;
  /** Every date from the first weigh-in to `date`, oldest first; empty when there is no weigh-in. */
  points: readonly BodyPoint[];
  /** Pace of the last 14 days; null while there is too little to say. */
  pace: Pace | null;
  /** Change of tissue over the last four weeks, kg: as for the pace, neither water nor a scale that moved is in it. */
  fourWeeksKg: Estimate | null;
  /** Sites in use, each oldest first. */
  tape: readonly { site: TapeSite; readings: readonly { id: string; date: string; cm: number }[] }[];
  /** Newest first. */
  calipers: readonly CalipersView[];
  fat: FatEstimate | null;
  /** Null without a bodyweight line or an estimate of fat. */
  fatFreeIndex: FatFreeIndex | null;
  /** Of the last 4 and of the last 12 weeks, as far as the bodyweight line goes back. */
  leanShares: readonly LeanShareView[];
  /** Newest first. */
  cycleStarts: readonly { id: string; date: string }[];
  /** What was told to move the readings without being tissue, newest first. */
  scaleShifts: readonly { id: string; date: string; cause: ShiftCause }[];
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
  /** Date of the reading; null when the athlete gave a measured value at set-up. */
  date: string | null;
}

/** Skinfolds of one date, and the body fat that their method tells from them; null when a fold is missing. */
export interface CalipersView {
  id: string;
  date: string;
  method: CaliperMethod;
  sumMm: number | null;
  fat: FatEstimate | null;
}

/** Fat-free mass over height squared, kg/m², normalised to a height of 1.80 m. */
export interface FatFreeIndex {
  normalised: number;
  raw: number;
  /** Standard error that comes from the one of body fat, kg/m². */
  error: number;
  /** Who published the index. */
  source: string;
}

/** How the change of tissue over some weeks splits, each part with its 90 % interval. */
export interface LeanShareView {
  weeks: number;
  /** The part of the change that is lean, 0 to 1; null while the change can't be told from none. */
  share: Estimate | null;
  leanKg: Estimate;
  fatKg: Estimate;
  /** Beside the bodyweight line. */
  from: readonly ('energy' | 'tape')[];
}

/** Where body mass goes when the pace stays in the band: straight lines from a point of the bodyweight line. */
export interface PaceWedge {
  from: string;
  fromKg: number;
  to: string;
  lowKg: number;
  highKg: number;
}
