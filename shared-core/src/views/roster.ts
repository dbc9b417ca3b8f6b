import type { Aim } from '../call/input.ts';
import type { Pace } from '../call/output.ts';
import { aimOf, phaseInForce } from '../season/phase-in-force.ts';
import { callDueOn } from './call-due.ts';
import { paceOf, readCall } from './read-call.ts';
import type { SeasonRecords } from './season-records.ts';

/** What the Roster page shows of one athlete. */
export interface RosterRow {
  athlete: string;
  name: string;
  /** Null while no phase has started. */
  phase: Aim['phase'] | null;
  /** Pace of the last 14 days with its band; null while there is too little to say. */
  pace: Pick<Pace, 'meanPercentPerWeek' | 'interval90' | 'band'> | null;
  /** Date from which the next weekly call is to be decided; null while no phase has started. */
  callDueOn: string | null;
  /** Whether it is to be decided now. */
  due: boolean;
  /** Whether the call says to see a professional before going on. */
  stop: boolean;
}

/** A part of the roster, by the athletes' ids. */
export interface RosterView {
  rows: readonly RosterRow[];
  /** Whether athletes follow after the last one. */
  more: boolean;
}

/** The row of an athlete on a date. */
export function rosterRow(records: SeasonRecords, date: string): RosterRow {
  const { athlete, phases, calls } = records;
  const phase = phaseInForce(phases, date);
  const reading = readCall(records, date);
  const pace = paceOf(reading);
  const dueOn = phase === null ? null : callDueOn(calls, date);
  return {
    athlete: athlete.id,
    name: athlete.name,
    phase: phase === null ? null : aimOf(phase).phase,
    pace: pace && {
      meanPercentPerWeek: pace.meanPercentPerWeek,
      interval90: pace.interval90,
      band: pace.band,
    },
    callDueOn: dueOn,
    due: dueOn !== null && dueOn <= date,
    stop: reading.call?.cautions.some(({ level }) => level === 'stop') ?? false,
  };
}
