import { at } from '../trend/reading.ts';
import { type DayTable, has } from './days.ts';
import { type FilterSetup, logLikelihood } from './filter.ts';
import { meanMoves, medianMove } from './moves.ts';
import { usualNoise } from './noise.ts';
import { startingAt } from './starting-at.ts';

/** A smaller move of the mean is not looked into; one so large is another unit or another body. Share of body mass (common practice, no source). */
const SMALLEST_SHARE = 0.009;
const LARGEST_SHARE = 0.15;
/** Days before and after that tell a jump from tissue, water and luck; jumps closer together are one (common practice, no source). */
const WINDOW = { before: 42, after: 28 };
const LEAST_DAYS_APART = 4;

/** Usual size of a move of the scale's zero as a share of body mass, and its chance on any one day (common practice, no source). */
const USUAL_SHARE = 0.018;
const SHIFT_CHANCE = 1 / 365;
/** Half the distance of the sizes whose likelihoods are compared, kg (common practice, no source). */
const APART_KG = 0.3;
/** A best size further from the readings' own, times that distance, is no parabola's: odd readings are at work (common practice, no source). */
const FARTHEST_APART = 2;
/**
 * Log odds at which a move is as likely as not, since noise has heavier tails than the likelihood knows; and the least probability
 * that counts (common practice, no source).
 */
const CERTAIN = Math.log(20);
const LEAST_SURE = 0.1;

/** Spreads of the readings, times the usual one, under which a jump is weighed (common practice, no source). */
const SPREADS = [0.6, 1.1, 2];

/**
 * A stretch of so many days without a log may be an illness or a holiday: how near to a jump it ends, how often one begins on a day
 * without a log, the chance that it is eaten quite unlike the plan, and how many times the usual error its days then have (common practice, no source).
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
 * move counts by its probability.
 */
export function explainJumps(setup: FilterSetup, table: DayTable): void {
  const moves = meanMoves(table);
  const smallest = SMALLEST_SHARE * setup.startMassKg;
  let last = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < table.count; row++) {
    const move = at(moves, row);
    if (Math.abs(move) < smallest || !isPeak(moves, row) || row - last < LEAST_DAYS_APART) continue;
    if (explain(setup, table, row)) last = row;
  }
}

function isPeak(moves: Float64Array, row: number): boolean {
  const here = Math.abs(at(moves, row));
  for (let other = row - LEAST_DAYS_APART + 1; other < row + LEAST_DAYS_APART; other++)
    if (Math.abs(at(moves, other)) > here) return false;
  return true;
}

/** Weighs what may have moved the readings at a row against luck, and writes the likeliest into the table. */
function explain(setup: FilterSetup, table: DayTable, row: number): boolean {
  const stretch = stretchNear(table, row);
  const first = Math.max(0, Math.min(row, stretch?.from ?? row) - WINDOW.before);
  const end = Math.min(table.count, row + WINDOW.after);
  const there = startingAt(setup, table, first);
  // The jump itself would pass for noise, so the athlete's own estimate does not serve here.
  const logs = () =>
    SPREADS.map((share) => {
      const { scaleSd, waterSd, waterCarry } = usualNoise(there.startMassKg);
      const noise = { scaleSd: share * scaleSd, waterSd: share * waterSd, waterCarry };
      return logLikelihood({ ...there, noise }, table, first, end);
    });
  const none = logOfSum(logs());
  const shift = weighShift(setup, table, row, logs);
  const shiftOdds = shift.log - none;
  if (stretch !== null) {
    widen(table, stretch, UNLIKE_TIMES);
    const unlikeOdds = logOfSum(logs()) - none + priorOdds(table, stretch);
    if (unlikeOdds > Math.max(0, shiftOdds)) {
      table.unlikePlan.fill(1, stretch.from, stretch.to);
      return true;
    }
    widen(table, stretch, 1 / UNLIKE_TIMES);
  }
  const sure = 1 / (1 + Math.exp(CERTAIN - shiftOdds));
  if (sure < LEAST_SURE) return false;
  // Mean and variance of a move that may not have been one.
  table.shiftKg[row] = sure * shift.kg;
  table.shiftVar[row] = sure * shift.sd ** 2 + sure * (1 - sure) * shift.kg ** 2;
  return true;
}

/** Size of a move of the scale's zero at a row, kg, and the log of its likelihood with its prior, over the noise levels. */
function weighShift(
  setup: FilterSetup,
  table: DayTable,
  row: number,
  logs: () => number[],
): { kg: number; sd: number; log: number } {
  const guessKg = medianMove(table, row);
  const logsAt = (kg: number) => {
    table.shiftKg[row] = kg;
    return logs();
  };
  const middles = logsAt(guessKg);
  const lesses = logsAt(guessKg - APART_KG);
  const mores = logsAt(guessKg + APART_KG);
  table.shiftKg[row] = 0;
  const usual = USUAL_SHARE * setup.startMassKg;
  const peaks = middles.map((middle, index) => {
    const less = lesses[index] ?? middle;
    const more = mores[index] ?? middle;
    // The likelihood of a linear model is a parabola in the size of the move.
    const bend = Math.min(-1e-6, less - 2 * middle + more);
    const kg = guessKg + (APART_KG * (less - more)) / (2 * bend);
    const sd = Math.min(usual, APART_KG / Math.sqrt(-bend));
    const possible =
      Math.abs(kg) < LARGEST_SHARE * setup.startMassKg && Math.abs(kg - guessKg) < FARTHEST_APART * APART_KG;
    const prior = possible
      ? Math.log((SHIFT_CHANCE * sd) / usual) - (kg / usual) ** 2 / 2
      : Number.NEGATIVE_INFINITY;
    return { kg, sd, log: middle - (less - more) ** 2 / (8 * bend) + prior };
  });
  const best = peaks.reduce((one, other) => (other.log > one.log ? other : one));
  return { ...best, log: logOfSum(peaks.map(({ log }) => log)) };
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
