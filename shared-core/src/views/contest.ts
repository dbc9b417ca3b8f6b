import { drivenPace } from '../call/guards.ts';
import type { Phase } from '../records/kinds.ts';
import { daysBetween } from '../season/dates.ts';
import { aimOf, phaseInForce } from '../season/phase-in-force.ts';
import type { Interval } from '../trend/estimate.ts';
import { type CallReading, paceOf } from './read-call.ts';

/** The next contest of the plan, and what the bodyweight line of today leads to by then. */
export interface ContestAhead {
  /** Id of the phase that names it. */
  phase: string;
  date: string;
  /** From the date of the view; at least 1. */
  daysLeft: number;
  /** Whether other phases start before it. */
  throughPhases: boolean;
  /** Body mass to expect at the pace that each phase until then aims for, as far as a call drives at it, kg. */
  atAimKg: number;
  /**
   * What the ends of the 90 % interval of the present pace lead to, kg; null while there is too little to say, and where
   * another phase starts before the contest, since the pace is to change then.
   */
  atPaceKg: Interval | null;
}

/** No pace holds for longer; a contest beyond is a slip of the year, most likely (common practice, no source). */
const MOST_DAYS_AHEAD = 731;

/** An end of a stretch in which one pace holds. */
interface Stretch {
  to: string;
  percentPerWeek: number;
}

/**
 * The first contest after a date, whichever phase names it. Paces are % of body mass a week, so they add up like interest
 * (common practice, no source). Null without one in the next two years, without a bodyweight line, and when the call says
 * to see a professional before anything else: then it drives at nothing. `read` is called only where there is a contest,
 * because it fits the model.
 */
export function contestAhead(
  phases: readonly Phase[],
  date: string,
  read: () => CallReading,
): ContestAhead | null {
  const contest = nextContest(phases, date);
  if (contest === null || daysBetween(date, contest.date) > MOST_DAYS_AHEAD) return null;
  const reading = read();
  const nowKg = reading.line.at(-1)?.massKg.mean;
  if (nowKg === undefined || reading.call?.cautions.some(({ level }) => level === 'stop')) return null;
  const starts = phases
    .map(({ from }) => from)
    .filter((from) => from > date && from < contest.date)
    .sort();
  const stretches = [date, ...starts].map((from, i) => ({
    to: starts[i] ?? contest.date,
    percentPerWeek: drivenPace(aimOf(phaseInForce(phases, from)).pacePercentPerWeek),
  }));
  const interval = starts.length > 0 ? undefined : paceOf(reading)?.interval90;
  const at = (percentPerWeek: number) => massAfter(nowKg, date, [{ to: contest.date, percentPerWeek }]);
  return {
    ...contest,
    daysLeft: daysBetween(date, contest.date),
    throughPhases: starts.length > 0,
    atAimKg: massAfter(nowKg, date, stretches),
    atPaceKg: interval === undefined ? null : { low: at(interval.low), high: at(interval.high) },
  };
}

/** The first contest after a date and the phase that names it, of several the one that starts last. */
export function nextContest(
  phases: readonly Phase[],
  date: string,
): Pick<ContestAhead, 'phase' | 'date'> | null {
  let next: { phase: string; date: string; from: string } | null = null;
  for (const { id, from, contestDate } of phases) {
    if (contestDate === undefined || contestDate <= date) continue;
    const isSooner = next === null || contestDate < next.date;
    const isLater = next !== null && contestDate === next.date && from + id > next.from + next.phase;
    if (isSooner || isLater) next = { phase: id, date: contestDate, from };
  }
  return next && { phase: next.phase, date: next.date };
}

function massAfter(nowKg: number, date: string, stretches: readonly Stretch[]): number {
  let kg = nowKg;
  let from = date;
  for (const { to, percentPerWeek } of stretches) {
    kg *= (1 + percentPerWeek / 100) ** (daysBetween(from, to) / 7);
    from = to;
  }
  return kg;
}
