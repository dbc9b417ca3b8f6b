import { at } from './at.ts';
import { type DayTable, has } from './day-table.ts';
import { logLikelihood } from './filter.ts';
import { meanMoves } from './moves.ts';
import { usualNoise } from './noise.ts';
import type { FilterSetup } from './open-filter.ts';
import { startingAt } from './starting-at.ts';

/** A smaller move of the mean reading is not looked into, share of body mass (common practice, no source). */
const SMALLEST_SHARE = 0.009;
/** Days before and after that tell a jump from tissue, water and luck; jumps closer together are one (common practice, no source). */
const WINDOW = { before: 42, after: 28 };
const LEAST_DAYS_APART = 4;
/** Jumps of so many days are all looked into, and of the older ones so many, the largest (common practice, no source). */
const LATE_DAYS = 300;
const MOST_OLDER = 20;

/** How far a scale's zero moves, standard deviations as shares of body mass; and the chance that it does on any one day (common practice, no source). */
const SIZES = [0.018, 0.08];
const SHIFT_CHANCE = 1 / 365;
/**
 * Log odds at which a move is as likely as not, since noise has heavier tails than the likelihood knows; and the least probability
 * that counts (common practice, no source).
 */
const CERTAIN = Math.log(20);
const LEAST_SURE = 0.1;
/** Spreads of the readings, times the usual one, under which a jump is weighed, the smallest first (common practice, no source). */
const SPREADS = [0.6, 1.1, 2] as const;
/** What a jump must gain under the smallest spread to be weighed under the others as well (common practice, no source). */
const WORTH_A_LOOK = 3;

/**
 * A stretch of so many days without a log may be an illness or a holiday: how near to a jump it ends, how often one begins on a day
 * without a log, the chance that it is eaten quite unlike the plan, and how many times the usual error its days then have
 * (common practice, no source).
 */
const STRETCH_DAYS = 3;
const NEAR_DAYS = 7;
const EVENT_CHANCE = 1 / 300;
const UNLIKE_CHANCE = 0.5;
const UNLIKE_TIMES = 7;

/**
 * Finds where the readings jump as neither log nor plan explains, and writes into the table what most likely did it: the scale's
 * zero moved (another scale, creatine, water), or a stretch without a log was eaten unlike the plan. Both leave maintenance alone.
 * Shocks as interventions in a state-space model: Harvey AC, Koopman SJ. J Bus Econ Stat 1992;10:377–389 (from memory); a
 * move counts by its probability. Near a move that was told nothing is looked into.
 */
export function explainJumps(setup: FilterSetup, table: DayTable): void {
  const taken = [...table.shiftVar.keys()].filter((row) => at(table.shiftVar, row) > 0);
  for (const row of peaksOf(table, SMALLEST_SHARE * setup.startMassKg))
    if (taken.every((other) => Math.abs(other - row) >= LEAST_DAYS_APART) && explain(setup, table, row))
      taken.push(row);
}

/** Rows where the mean reading moves most, the largest first: a small jump beside a large one is only seen once that is known. */
function peaksOf(table: DayTable, smallestKg: number): number[] {
  const moves = meanMoves(table).map(Math.abs);
  const peaks: number[] = [];
  for (let row = 0; row < table.count; row++)
    if (at(moves, row) >= smallestKg && isPeak(moves, row)) peaks.push(row);
  const isLate = (row: number) => row >= table.count - LATE_DAYS;
  const byMove = peaks.toSorted((a, b) => at(moves, b) - at(moves, a));
  return [...byMove.filter(isLate), ...byMove.filter((row) => !isLate(row)).slice(0, MOST_OLDER)];
}

function isPeak(moves: Float64Array, row: number): boolean {
  for (let other = row - LEAST_DAYS_APART + 1; other < row + LEAST_DAYS_APART; other++)
    if (at(moves, other) > at(moves, row)) return false;
  return true;
}

/** Log-likelihoods of the readings around a row under one spread of theirs, by what may have moved them. */
interface Likelihoods {
  none: number;
  /** The scale's zero, by size. */
  shifted: number[];
  /** A stretch eaten unlike the plan; impossible without a stretch. */
  unlike: number;
}

/** Weighs what may have moved the readings at a row against luck, and writes the likeliest into the table. */
function explain(setup: FilterSetup, table: DayTable, row: number): boolean {
  const stretch = stretchNear(table, row);
  const variances = SIZES.map((size) => (size * setup.startMassKg) ** 2);
  const under = likelihoodsAt(setup, table, row, stretch, variances);
  const [tight, ...wider] = SPREADS;
  const tightly = under(tight);
  if (Math.max(...tightly.shifted, tightly.unlike) - tightly.none < WORTH_A_LOOK) return false;
  const all = [tightly, ...wider.map(under)];
  const over = (of: (one: Likelihoods) => number) => logOfSum(all.map(of));
  const none = over((one) => one.none);
  const bySize = variances.map((_, size) => over(({ shifted }) => shifted[size] ?? Number.NEGATIVE_INFINITY));
  const most = logOfSum(bySize);
  const shiftOdds = most - Math.log(SIZES.length) - none + Math.log(SHIFT_CHANCE);
  if (stretch !== null) {
    const unlikeOdds = over(({ unlike }) => unlike) - none + priorOdds(table, stretch);
    if (unlikeOdds > Math.max(0, shiftOdds)) {
      widen(table, stretch, UNLIKE_TIMES);
      table.unlikePlan.fill(1, stretch.from, stretch.to);
      return true;
    }
  }
  const sure = 1 / (1 + Math.exp(CERTAIN - shiftOdds));
  if (sure < LEAST_SURE) return false;
  const shares = bySize.map((log) => Math.exp(log - most));
  table.shiftVar[row] =
    sure * variances.reduce((sum, variance, size) => sum + (shares[size] ?? 0) * variance, 0);
  return true;
}

/** The likelihoods at a row under a spread, times the usual one; the table is as before after each. */
function likelihoodsAt(
  setup: FilterSetup,
  table: DayTable,
  row: number,
  stretch: Stretch | null,
  variances: readonly number[],
): (spread: number) => Likelihoods {
  const first = Math.max(0, Math.min(row, stretch?.from ?? row) - WINDOW.before);
  const end = Math.min(table.count, row + WINDOW.after);
  const there = { ...startingAt(setup, table, first), zeroMoves: true };
  // The jump itself would pass for noise, so the athlete's own estimate does not serve here.
  const { scaleSd, waterSd, waterCarry } = usualNoise(there.startMassKg);
  return (spread) => {
    const noise = { scaleSd: spread * scaleSd, waterSd: spread * waterSd, waterCarry };
    const log = () => logLikelihood({ ...there, noise }, table, first, end);
    const none = log();
    const shifted = variances.map((variance) => {
      table.shiftVar[row] = variance;
      return log();
    });
    table.shiftVar[row] = 0;
    if (stretch === null) return { none, shifted, unlike: Number.NEGATIVE_INFINITY };
    widen(table, stretch, UNLIKE_TIMES);
    const unlike = log();
    widen(table, stretch, 1 / UNLIKE_TIMES);
    return { none, shifted, unlike };
  };
}

function logOfSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most === Number.NEGATIVE_INFINITY
    ? most
    : most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}

interface Stretch {
  from: number;
  to: number;
}

/** The last stretch without a log that began before a row and ended not long before it; null when there is none. */
function stretchNear({ loggedKcal, unlikePlan }: DayTable, row: number): Stretch | null {
  const open = (day: number) => !has(loggedKcal, day) && unlikePlan[day] === 0;
  let to = Math.min(loggedKcal.length, row + LEAST_DAYS_APART);
  while (to > row - NEAR_DAYS) {
    let from = to;
    while (from > 0 && open(from - 1)) from--;
    // Before the first log nothing tells how this athlete eats, so nothing is unlike it.
    if (from > 0 && to - from >= STRETCH_DAYS && from < row) return { from, to };
    to = from - 1;
  }
  return null;
}

/** Log odds, before the scale is asked, that a stretch was eaten unlike the plan: the rarer days without a log, the likelier. */
function priorOdds({ loggedKcal, count }: DayTable, { from, to }: Stretch): number {
  const unlogged = loggedKcal.reduce((sum, kcal) => sum + (Number.isNaN(kcal) ? 1 : 0), 0);
  const forgotten = ((unlogged + 1) / (count + 2)) ** (to - from);
  const unlike = (UNLIKE_CHANCE * EVENT_CHANCE) / (EVENT_CHANCE + forgotten);
  return Math.log(unlike / (1 - unlike));
}

function widen(table: DayTable, { from, to }: Stretch, times: number): void {
  for (let row = from; row < to; row++) table.energyVar[row] = at(table.energyVar, row) * times ** 2;
}
