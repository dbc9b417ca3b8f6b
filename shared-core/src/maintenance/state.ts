import { at } from './at.ts';

/** Places in the state vector. Adaptation is the part of maintenance that follows intake, kcal/d. */
export const MASS = 0;
export const BASE = 1;
export const ADAPT = 2;
export const WATER = 3;
export const RESPONSE = 4;
/** How much more tissue a kcal of the log moves than the formula says, as a share: own energy density and a log that runs short. */
export const DENSITY = 5;
export const WEEK_COS = 6;
const WEEK_SIN = 7;
const CYCLE_COS = 8;
const CYCLE_SIN = 9;

/** Size of the state without and with a cycle; a scale whose zero moved adds a state after them, a tape one at the end. */
export const PLAIN_SIZE = 8;
export const CYCLE_SIZE = 10;

/** What links one morning to the next. One object is reused for all days. */
export interface Transition {
  energyKcal: number;
  /** kg of tissue for each kcal above maintenance. */
  kgPerKcal: number;
  /** Rise of maintenance with mass, kcal/d per kg, counted from `referenceKg`. */
  keepPerKg: number;
  referenceKg: number;
  waterCarry: number;
  /** Slopes of the day's tissue change against density and against maintenance. Set with `linearise`. */
  loadKg: number;
  pullKg: number;
  massVar: number;
  baseVar: number;
  waterVar: number;
}

/** Slow change of what the model holds constant: response to carbohydrate, the height of a rhythm, the waist. Variance a day (common practice, no source). */
const RESPONSE_VAR = 1e-6;
const REST_VAR = 1e-6;
/** Adaptation and its pace: 0.14 of a change of intake in 14 days, in units of maintenance. Hall KD et al. Lancet 2011, equation 4 (second-hand). */
export const ADAPT_SHARE = 0.14 / 0.9;
export const ADAPT_KEEP = 13 / 14;
const ADAPT_PER_DAY = ADAPT_SHARE * (1 - ADAPT_KEEP);

/** Moves mean and covariance one day on, in place. */
export function predict(
  mean: Float64Array,
  meanAt: number,
  cov: Float64Array,
  covAt: number,
  size: number,
  move: Transition,
): void {
  const k = move.pullKg;
  const keep = 1 - k * move.keepPerKg;
  const mass = at(mean, meanAt + MASS);
  const base = at(mean, meanAt + BASE);
  const adapt = at(mean, meanAt + ADAPT);
  const maintenance = maintenanceOf(mean, meanAt, move);
  const density = at(mean, meanAt + DENSITY);
  mean[meanAt + MASS] = mass + move.kgPerKcal * (1 + density) * (move.energyKcal - maintenance);
  mean[meanAt + ADAPT] = ADAPT_KEEP * adapt + ADAPT_PER_DAY * (move.energyKcal - base);
  mean[meanAt + WATER] = move.waterCarry * at(mean, meanAt + WATER);

  moveRows(cov, covAt, size, move);
  for (let start = covAt, end = covAt + size * size; start < end; start += size) {
    const fromBase = at(cov, start + BASE);
    const fromAdapt = at(cov, start + ADAPT);
    cov[start + MASS] =
      keep * at(cov, start + MASS) - k * (fromBase + fromAdapt) + move.loadKg * at(cov, start + DENSITY);
    cov[start + ADAPT] = ADAPT_KEEP * fromAdapt - ADAPT_PER_DAY * fromBase;
    cov[start + WATER] = move.waterCarry * at(cov, start + WATER);
  }
  addTo(cov, covAt + MASS * (size + 1), move.massVar);
  addTo(cov, covAt + BASE * (size + 1), move.baseVar);
  addTo(cov, covAt + WATER * (size + 1), move.waterVar);
  addTo(cov, covAt + RESPONSE * (size + 1), RESPONSE_VAR);
  for (let state = WEEK_COS; state < size; state++) addTo(cov, covAt + state * (size + 1), REST_VAR);
}

/** Maintenance of a state, kcal/d: base, adaptation and what mass adds. */
export function maintenanceOf(mean: Float64Array, meanAt: number, move: Transition): number {
  return (
    at(mean, meanAt + BASE) +
    at(mean, meanAt + ADAPT) +
    move.keepPerKg * (at(mean, meanAt + MASS) - move.referenceKg)
  );
}

/** Sets the slopes of a move around a state: the tissue change is a product of density and surplus. */
export function linearise(mean: Float64Array, meanAt: number, move: Transition): void {
  move.loadKg = move.kgPerKcal * (move.energyKcal - maintenanceOf(mean, meanAt, move));
  move.pullKg = move.kgPerKcal * (1 + at(mean, meanAt + DENSITY));
}

/** Multiplies a matrix from the left with the transition of one day, in place. */
export function moveRows(matrix: Float64Array, start: number, size: number, move: Transition): void {
  const k = move.pullKg;
  const keep = 1 - k * move.keepPerKg;
  const massRow = start + MASS * size;
  const baseRow = start + BASE * size;
  const adaptRow = start + ADAPT * size;
  const waterRow = start + WATER * size;
  const densityRow = start + DENSITY * size;
  for (let column = 0; column < size; column++) {
    const fromBase = at(matrix, baseRow + column);
    const fromAdapt = at(matrix, adaptRow + column);
    matrix[massRow + column] =
      keep * at(matrix, massRow + column) -
      k * (fromBase + fromAdapt) +
      move.loadKg * at(matrix, densityRow + column);
    matrix[adaptRow + column] = ADAPT_KEEP * fromAdapt - ADAPT_PER_DAY * fromBase;
    matrix[waterRow + column] = move.waterCarry * at(matrix, waterRow + column);
  }
}

function addTo(values: Float64Array, index: number, amount: number): void {
  values[index] = at(values, index) + amount;
}

/** What a morning's scale sees: the known water and the height of week and cycle on that day. */
export interface Sight {
  knownWaterKg: number;
  weekCos: number;
  weekSin: number;
  cycleCos: number;
  cycleSin: number;
  /** Place of the scale's zero in the state; −1 where it never moved. */
  zero: number;
}

/**
 * What a morning's scale sees of a row of states: of their means the reading to expect, kg; of one state's covariances its
 * covariance with the reading.
 */
export function seenBy(sight: Sight, values: Float64Array, start: number, size: number): number {
  let sum =
    at(values, start + MASS) +
    at(values, start + WATER) +
    sight.knownWaterKg * at(values, start + RESPONSE) +
    sight.weekCos * at(values, start + WEEK_COS) +
    sight.weekSin * at(values, start + WEEK_SIN);
  if (size >= CYCLE_SIZE)
    sum += sight.cycleCos * at(values, start + CYCLE_COS) + sight.cycleSin * at(values, start + CYCLE_SIN);
  if (sight.zero >= 0) sum += at(values, start + sight.zero);
  return sum;
}

/** Covariance of each state with the reading into `out`; returns the reading's variance without the scale's own. */
export function sightCovariance(
  cov: Float64Array,
  covAt: number,
  size: number,
  sight: Sight,
  out: Float64Array,
): number {
  for (let state = 0; state < size; state++) out[state] = seenBy(sight, cov, covAt + state * size, size);
  return seenBy(sight, out, 0, size);
}

/** Takes a reading in, in place: `miss` is reading minus expected, `spread` its variance, `gain` from `sightCovariance`. */
export function correct(
  mean: Float64Array,
  meanAt: number,
  cov: Float64Array,
  covAt: number,
  size: number,
  gain: Float64Array,
  miss: number,
  spread: number,
): void {
  const scaled = miss / spread;
  for (let row = 0; row < size; row++) {
    const g = at(gain, row);
    mean[meanAt + row] = at(mean, meanAt + row) + g * scaled;
    const share = g / spread;
    const start = covAt + row * size;
    for (let column = row; column < size; column++) {
      const value = at(cov, start + column) - share * at(gain, column);
      cov[start + column] = value;
      cov[covAt + column * size + row] = value;
    }
  }
}
