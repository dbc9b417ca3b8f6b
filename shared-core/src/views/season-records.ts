import type {
  Athlete,
  Calipers,
  CycleStart,
  DayLog,
  Entry,
  Food,
  Lift,
  LiftSet,
  Phase,
  ScaleShift,
  StandingMeal,
  Tape,
  WeeklyCallRecord,
  WeighIn,
} from '../records/kinds.ts';
import type { EatenDay } from './eaten-day.ts';

/** The records of one athlete that views are computed from, in any order. A view of a date needs no others. */
export interface SeasonRecords {
  athlete: Athlete;
  phases: readonly Phase[];
  foods: readonly Food[];
  entries: readonly Entry[];
  /** Dates that were added up before, whose entries are not among `entries`. */
  eaten?: readonly EatenDay[];
  days: readonly DayLog[];
  weighIns: readonly WeighIn[];
  tape: readonly Tape[];
  calipers: readonly Calipers[];
  cycleStarts: readonly CycleStart[];
  scaleShifts: readonly ScaleShift[];
  lifts: readonly Lift[];
  liftSets: readonly LiftSet[];
  calls: readonly WeeklyCallRecord[];
  standingMeals: readonly StandingMeal[];
}
