import { at } from './at.ts';
import type { DayTable } from './day-table.ts';
import { type FilterTrack, stepShare } from './filter.ts';
import { sandwich, solveSymmetric, transposedTimes } from './matrix.ts';
import type { RunningFilter } from './open-filter.ts';
import {
  ADAPT,
  BASE,
  linearise,
  MASS,
  maintenanceOf,
  moveRows,
  predict,
  RESPONSE,
  type Transition,
} from './state.ts';

/** What all readings together say about each morning. Variances beside means; kilograms and kcal/d. */
export interface SmoothedDays {
  tissue: Float64Array;
  tissueVar: Float64Array;
  /** What a scale shows on an average morning: tissue, the water that carbohydrate and salt bind, and its zero of that day. */
  line: Float64Array;
  lineVar: Float64Array;
  maintenance: Float64Array;
  maintenanceVar: Float64Array;
  /** By how much the scale's zero has moved since the first row. */
  zero: Float64Array;
  /** Response to known water, of the last day. */
  response: { mean: number; sd: number };
  /** Covariance of tissue on the morning after the last row with tissue `lag` mornings before, (kg)². */
  tissueCovariance(lag: number): number;
}

/** Longest stretch whose change of tissue gets an exact interval, days. */
export const LONGEST_LAG = 28;

/**
 * Walks back over the filter's track: Rauch HE, Tung F, Striebel CT. AIAA J 1965;3:1445–1450 (from memory), on the moments of the bank's
 * mixture, with the chance of a step spread over the days.
 */
export function smooth(filter: RunningFilter, track: FilterTrack, table: DayTable): SmoothedDays {
  const { count } = table;
  const { size, means, covs } = track;
  const { zero } = filter.sight;
  const square = size * size;
  const move = { ...filter.move };
  move.baseVar = filter.setup.driftVar + stepShare(filter.setup.search);
  const out = columns(count);
  const lagged = new Float64Array(LONGEST_LAG + 1);

  const mean = Float64Array.from(filter.bank.mean);
  const cov = Float64Array.from(filter.bank.cov);
  const nextMean = new Float64Array(size);
  const nextCov = new Float64Array(square);
  const gain = new Float64Array(square);
  const scratch = new Float64Array(square);
  // Product of all gains from a row to the end, times the end's covariance: covariance with the end.
  const toEnd = Float64Array.from(filter.bank.cov);
  lagged[0] = at(toEnd, MASS * (size + 1));
  // Newest first: `cov` starts as the end's covariance.
  for (let row = count - 1; row >= 0; row--) {
    for (let i = 0; i < size; i++) nextMean[i] = at(means, row * size + i);
    for (let i = 0; i < square; i++) {
      nextCov[i] = at(covs, row * square + i);
      gain[i] = at(nextCov, i);
    }
    move.energyKcal = at(table.energyKcal, row);
    move.kgPerKcal = at(track.kgPerKcal, row);
    move.massVar = move.kgPerKcal ** 2 * at(table.energyVar, row);
    linearise(means, row * size, move);
    moveRows(gain, 0, size, move);
    predict(nextMean, 0, nextCov, 0, size, move);
    if (zero >= 0 && row + 1 < count)
      nextCov[zero * (size + 1)] = at(nextCov, zero * (size + 1)) + at(table.shiftVar, row + 1);
    for (let i = 0; i < square; i++) scratch[i] = at(nextCov, i);
    solveSymmetric(scratch, gain, size);
    // `gain` now holds the transposed smoother gain: column j belongs to state j of this row.
    for (let i = 0; i < size; i++) nextMean[i] = at(mean, i) - at(nextMean, i);
    for (let i = 0; i < square; i++) nextCov[i] = at(cov, i) - at(nextCov, i);
    for (let i = 0; i < size; i++) {
      let sum = at(means, row * size + i);
      for (let j = 0; j < size; j++) sum += at(gain, j * size + i) * at(nextMean, j);
      mean[i] = sum;
    }
    sandwich(gain, nextCov, covs, row * square, size, scratch, cov);
    if (count - row <= LONGEST_LAG) {
      transposedTimes(gain, toEnd, size, scratch);
      toEnd.set(scratch);
      lagged[count - row] = at(toEnd, MASS * (size + 1));
    }
    write(out, row, mean, cov, size, at(table.knownWaterKg, row), zero, move);
  }
  const responseAt = RESPONSE * (size + 1);
  return {
    ...out,
    response: { mean: at(filter.bank.mean, RESPONSE), sd: Math.sqrt(at(filter.bank.cov, responseAt)) },
    tissueCovariance: (lag) => at(lagged, Math.min(lag, LONGEST_LAG)),
  };
}

function columns(count: number) {
  const column = () => new Float64Array(count);
  return {
    tissue: column(),
    tissueVar: column(),
    line: column(),
    lineVar: column(),
    maintenance: column(),
    maintenanceVar: column(),
    zero: column(),
  };
}

function write(
  out: ReturnType<typeof columns>,
  row: number,
  mean: Float64Array,
  cov: Float64Array,
  size: number,
  waterKg: number,
  zero: number,
  move: Transition,
): void {
  const mass = at(mean, MASS);
  out.tissue[row] = mass;
  out.tissueVar[row] = at(cov, MASS * (size + 1));
  out.line[row] = mass + waterKg * at(mean, RESPONSE);
  out.lineVar[row] = lineVariance(cov, size, waterKg, zero);
  if (zero >= 0) {
    out.zero[row] = at(mean, zero);
    out.line[row] = at(out.line, row) + at(mean, zero);
  }
  out.maintenance[row] = maintenanceOf(mean, 0, move);
  out.maintenanceVar[row] = maintenanceVariance(cov, size, move.keepPerKg);
}

/** Variance of tissue + known water × response + the scale's zero, where it moves. */
export function lineVariance(cov: Float64Array, size: number, waterKg: number, zero: number): number {
  const c = (i: number, j: number) => at(cov, i * size + j);
  const plain = c(MASS, MASS) + 2 * waterKg * c(MASS, RESPONSE) + waterKg ** 2 * c(RESPONSE, RESPONSE);
  return zero < 0 ? plain : plain + c(zero, zero) + 2 * (c(MASS, zero) + waterKg * c(RESPONSE, zero));
}

/** Variance of base + adaptation + keep·mass. */
export function maintenanceVariance(cov: Float64Array, size: number, keep: number): number {
  const c = (i: number, j: number) => at(cov, i * size + j);
  return (
    c(BASE, BASE) +
    c(ADAPT, ADAPT) +
    keep ** 2 * c(MASS, MASS) +
    2 * (c(BASE, ADAPT) + keep * (c(BASE, MASS) + c(ADAPT, MASS)))
  );
}
