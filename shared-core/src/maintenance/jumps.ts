import { at } from '../trend/reading.ts';
import { median } from '../trend/robust.ts';
import { type DayTable, has } from './days.ts';
import { type FilterSetup, logLikelihood, RESPONSE_START } from './filter.ts';
import { usualNoise } from './noise.ts';

/** Readings that are set side by side to find a jump, fewest of them, and days in which those after it must lie (common practice, no source). */
const BESIDE = 7;
const FEWEST = 3;
const AFTER_DAYS = 7;
/** A difference of two means under so many of its standard errors, with water counted as luck of single days, is not looked into (common practice, no source). */
const LUCK = 4;
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
/** Log odds that a move must have: noise has heavier tails than the likelihood knows (common practice, no source). */
const CERTAIN = Math.log(20);

/** Spreads of the readings, times the usual one, under which a jump is weighed (common practice, no source). */
const SPREADS = [0.6, 1.1, 2];

/**
 * A stretch of so many days without a log may be an illness or a holiday: how often one begins on a day without a log, the chance
 * that it is eaten quite unlike the plan, and how many times the usual error its days then have (common practice, no source).
 */
const STRETCH_DAYS = 3;
const EVENT_CHANCE = 1 / 300;
const UNLIKE_CHANCE = 0.5;
const UNLIKE_TIMES = 7;

/**
 * Finds where the readings jump as neither log nor plan explains, and writes into the table what most likely did it: the scale's
 * zero moved (another scale, creatine, water), or a stretch without a log was eaten unlike the plan. Both leave maintenance alone.
 * Shocks as interventions in a state-space model: Harvey AC, Koopman SJ. J Bus Econ Stat 1992;10:377–389 (from memory); one is
 * believed when its posterior odds are better than even.
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

/** By how much the mean reading of the days from each row on differs from that of the readings before, kg; 0 where luck may do it. */
function meanMoves(table: DayTable): Float64Array {
  const rows: number[] = [];
  const sum = [0];
  const squares = [0];
  const level = firstReading(table, 0);
  for (let row = 0; row < table.count; row++) {
    if (!has(table.weightKg, row)) continue;
    const kg = at(table.weightKg, row) - level - RESPONSE_START.mean * at(table.knownWaterKg, row);
    sum.push((sum[rows.length] ?? 0) + kg);
    squares.push((squares[rows.length] ?? 0) + kg ** 2);
    rows.push(row);
  }
  const between = (sums: readonly number[], from: number, to: number) => (sums[to] ?? 0) - (sums[from] ?? 0);
  const mean = (from: number, to: number) => between(sum, from, to) / (to - from);
  const spread = (from: number, to: number) => between(squares, from, to) - (to - from) * mean(from, to) ** 2;
  const moves = new Float64Array(table.count);
  let to = 0;
  for (const [index, row] of rows.entries()) {
    while (to < rows.length && to < index + BESIDE && (rows[to] ?? 0) < row + AFTER_DAYS) to++;
    const from = Math.max(0, index - BESIDE);
    const [before, after] = [index - from, to - index];
    if (before < FEWEST || after < FEWEST) continue;
    const move = mean(index, to) - mean(from, index);
    const variance = (spread(from, index) + spread(index, to)) / (before + after - 2);
    if (Math.abs(move) > LUCK * Math.sqrt(variance * (1 / before + 1 / after))) moves[row] = move;
  }
  return moves;
}

/** The same by medians, so that an odd reading does not set its size. */
function medianMove({ weightKg, knownWaterKg, count }: DayTable, row: number): number {
  const readings = (from: number, step: 1 | -1, end: number) => {
    const found: number[] = [];
    for (let day = from; day !== end && found.length < BESIDE; day += step)
      if (has(weightKg, day)) found.push(at(weightKg, day) - RESPONSE_START.mean * at(knownWaterKg, day));
    return median(found);
  };
  return readings(row, 1, Math.min(count, row + AFTER_DAYS)) - readings(row - 1, -1, -1);
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
  let unlikeOdds = Number.NEGATIVE_INFINITY;
  if (stretch !== null) {
    widen(table, stretch, UNLIKE_TIMES);
    unlikeOdds = logOfSum(logs()) - none + priorOdds(table, stretch);
    if (unlikeOdds <= Math.max(0, shiftOdds)) widen(table, stretch, 1 / UNLIKE_TIMES);
  }
  const sure = 1 / (1 + Math.exp(CERTAIN - shiftOdds));
  if (sure < 0.1 && unlikeOdds <= 0) return false;
  if (stretch !== null && unlikeOdds > shiftOdds) table.unlikePlan.fill(1, stretch.from, stretch.to);
  else {
    // Mean and variance of a move that may not have been one.
    table.shiftKg[row] = sure * shift.kg;
    table.shiftVar[row] = sure * shift.sd ** 2 + sure * (1 - sure) * shift.kg ** 2;
  }
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
  while (to > row - BESIDE) {
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

/** One filter that starts at a row: maintenance may be another than at the start, and steps are not looked for. */
export function startingAt(setup: FilterSetup, table: DayTable, first: number): FilterSetup {
  const startMassKg = first === 0 ? setup.startMassKg : firstReading(table, first);
  const { search } = setup;
  return {
    ...setup,
    startMassKg,
    startFatKg: (setup.startFatKg * startMassKg) / setup.startMassKg,
    maintenance: { ...setup.maintenance, sd: 1.5 * setup.maintenance.sd },
    search: { ...search, hypotheses: 1 },
    firstWaistCm: Number.NaN,
    driftVar: setup.driftVar + (search.chance * search.stepVar) / search.everyDays,
  };
}

/** The first weigh-in from a row on, kg; there must be one. */
function firstReading({ weightKg, count }: DayTable, from: number): number {
  let row = from;
  while (row < count - 1 && !has(weightKg, row)) row++;
  return at(weightKg, row);
}
