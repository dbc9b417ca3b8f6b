import type { Aim } from '../call/input.ts';
import type { Athlete, Phase } from '../records/kinds.ts';
import type { KindOfDay } from '../season/kind-of-day.ts';
import type { DayTargets } from '../targets/types.ts';
import type { ContestAhead } from './contest.ts';

/** What the Plan page shows: the set-up, the phases, what each kind of day asks for and why, and the dates ahead. */
export interface PlanView {
  date: string;
  athlete: Athlete;
  /** Oldest first. */
  phases: readonly Phase[];
  /** Id of the phase in force on `date`; null when no phase has started. */
  phaseInForce: string | null;
  contest: ContestAhead | null;
  session: DayTargets;
  recovery: DayTargets;
  /** `date` and the 13 dates after it. `weekday` by ISO 8601, 1 = Monday. */
  calendar: readonly { date: string; weekday: number; kindOfDay: KindOfDay; phase: Aim['phase'] }[];
}
