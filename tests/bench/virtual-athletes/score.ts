import type { Aim } from '@platewright/core/call/input.ts';
import type { Run, TrueCall } from './run-types.ts';

/** Sums over athletes, so that parts of a population can be judged apart and added. */
export interface Tally {
  runs: number;
  days: number;
  daysInBand: number;
  dosesInBand: number;
  changes: number;
  reversals: number;
  changesInBand: number;
  /** Runs that ended at a mark below 1 g/kg. */
  low: number;
  maintenance: Record<'week4' | 'week8', { count: number; error: number }>;
  pace: { count: number; error: number; bias: number; intervals: number; covered: number };
  cover: { count: number; covered: number };
  expected: { count: number; error: number; covered: number };
}

const WINDOW = 14;
/** The first day that is judged: the beginning of week 3. */
const FIRST_JUDGED = 14;
const SMALLEST_CHANGE_G = 0.5;

/** An empty tally. */
export function nothingTallied(): Tally {
  return {
    runs: 0,
    days: 0,
    daysInBand: 0,
    dosesInBand: 0,
    changes: 0,
    reversals: 0,
    changesInBand: 0,
    low: 0,
    maintenance: { week4: { count: 0, error: 0 }, week8: { count: 0, error: 0 } },
    pace: { count: 0, error: 0, bias: 0, intervals: 0, covered: 0 },
    cover: { count: 0, covered: 0 },
    expected: { count: 0, error: 0, covered: 0 },
  };
}

/** True tissue pace of the trailing 14 days (fewer at the start), % of body mass a week. */
export function tissuePace(run: Run, day: number): number {
  const today = run.days[day];
  if (!today) throw new Error(`day ${day} was not lived`);
  const from = day - WINDOW;
  const before = from < 0 ? run.startTissueKg : (run.days[from]?.tissueKg ?? run.startTissueKg);
  const span = Math.min(WINDOW, day + 1);
  return (700 * (today.tissueKg - before)) / span / today.massKg;
}

const inBand = (pace: number, aim: Aim) => pace >= aim.band.low && pace <= aim.band.high;

/** Adds one athlete's run to the tally. */
export function tallyRun(tally: Tally, run: Run): void {
  tally.runs++;
  for (let day = FIRST_JUDGED; day < run.days.length; day++) {
    const today = run.days[day];
    if (!today) continue;
    tally.days++;
    if (inBand(tissuePace(run, day), today.aim)) tally.daysInBand++;
    if (inBand(today.dosePace, today.aim)) tally.dosesInBand++;
  }
  let direction = 0;
  for (const call of run.calls) {
    tallyEstimates(tally, run, call);
    const change = call.markAfterG - call.markBeforeG;
    if (Math.abs(change) < SMALLEST_CHANGE_G) continue;
    tally.changes++;
    if (direction !== 0 && Math.sign(change) !== direction) tally.reversals++;
    direction = Math.sign(change);
    if (inBand(tissuePace(run, call.day), call.aim)) tally.changesInBand++;
  }
  const last = run.calls.at(-1);
  const massKg = run.days.at(-1)?.massKg ?? 0;
  if (last && last.markAfterG < massKg) tally.low++;
}

function tallyEstimates(tally: Tally, run: Run, call: TrueCall): void {
  const week = (call.day + 1) / 7;
  const { maintenanceKcal, pace, expectedPace } = call.answer;
  if (maintenanceKcal) {
    const error = Math.abs(maintenanceKcal.mean - call.maintenanceKcal);
    const kept = week === 4 ? tally.maintenance.week4 : week === 8 ? tally.maintenance.week8 : null;
    if (kept) {
      kept.count++;
      kept.error += error;
    }
    if (week >= 3 && maintenanceKcal.high > maintenanceKcal.low) {
      tally.cover.count++;
      if (within(call.maintenanceKcal, maintenanceKcal)) tally.cover.covered++;
    }
  }
  if (expectedPace && week >= 3) {
    tally.expected.count++;
    tally.expected.error += Math.abs(expectedPace.mean - call.expectedPace);
    if (within(call.expectedPace, expectedPace)) tally.expected.covered++;
  }
  if (pace && week >= 3) {
    const truth = tissuePace(run, call.day);
    tally.pace.count++;
    tally.pace.error += Math.abs(pace.mean - truth);
    tally.pace.bias += pace.mean - truth;
    if (pace.high > pace.low) {
      tally.pace.intervals++;
      if (within(truth, pace)) tally.pace.covered++;
    }
  }
}

const within = (value: number, interval: { low: number; high: number }) =>
  value >= interval.low && value <= interval.high;

/** Adds the numbers of one tally into another of the same shape. */
export function addTally(into: Tally, other: Tally): void {
  addNumbers(into, other);
}

function addNumbers(into: object, other: object): void {
  const values = new Map<string, unknown>(Object.entries(other));
  for (const [key, value] of Object.entries(into)) {
    const added = values.get(key);
    if (typeof value === 'number' && typeof added === 'number') Object.assign(into, { [key]: value + added });
    else if (typeof value === 'object' && value && typeof added === 'object' && added)
      addNumbers(value, added);
  }
}

export interface Row {
  inBand: number;
  doses: number;
  changes: number;
  reversals: number;
  changesInBand: number;
  low: number;
  maintenance4: number;
  maintenance8: number;
  paceError: number;
  paceBias: number;
  paceCover: number;
  maintenanceCover: number;
  expectedError: number;
  expectedCover: number;
}

/** Turns sums into shares (%) and means. */
export function rowOf(tally: Tally): Row {
  const { maintenance, pace, cover, expected } = tally;
  return {
    inBand: (100 * tally.daysInBand) / tally.days,
    doses: (100 * tally.dosesInBand) / tally.days,
    changes: tally.changes / tally.runs,
    reversals: tally.reversals / tally.runs,
    changesInBand: tally.changesInBand / tally.runs,
    low: (100 * tally.low) / tally.runs,
    maintenance4: maintenance.week4.error / maintenance.week4.count,
    maintenance8: maintenance.week8.error / maintenance.week8.count,
    paceError: pace.error / pace.count,
    paceBias: pace.bias / pace.count,
    paceCover: (100 * pace.covered) / pace.intervals,
    maintenanceCover: (100 * cover.covered) / cover.count,
    expectedError: expected.error / expected.count,
    expectedCover: (100 * expected.covered) / expected.count,
  };
}
