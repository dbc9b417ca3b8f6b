import { at } from './at.ts';
import {
  BASE,
  correct,
  MASS,
  predict,
  type Sight,
  seenBy,
  sightCovariance,
  type Transition,
} from './state.ts';

/** How steps of maintenance are looked for. */
export interface StepSearch {
  /** Most hypotheses kept at a time; 1 means steps are not looked for. */
  hypotheses: number;
  /** A new hypothesis every so many days. */
  everyDays: number;
  /** Probability of a step within `everyDays`. */
  chance: number;
  /** Variance of a step, (kcal/d)². */
  stepVar: number;
}

/** Days in which a young hypothesis is not dropped: it needs that long to prove itself (common practice, no source). */
const PROTECTED_DAYS = 21;
const NEVER = -1;

/**
 * A small bank of filters that differ in when maintenance last stepped. Each carries its probability; the answer is their
 * mixture. Cf. Fearnhead P, Liu Z. J R Stat Soc B 2007;69:589–605 (changepoints online; from memory), kept short by dropping the least
 * probable.
 */
export interface Bank {
  size: number;
  search: StepSearch;
  used: number;
  means: Float64Array;
  covs: Float64Array;
  weights: Float64Array;
  /** Day index of each hypothesis' last step, −1 for none. */
  stepDay: Float64Array;
  /** Mixture of all hypotheses. */
  mean: Float64Array;
  cov: Float64Array;
  /** Sum of the log densities of the readings so far. */
  logLikelihood: number;
  misses: Float64Array;
  spreads: Float64Array;
  gains: Float64Array;
  gain: Float64Array;
}

/** A bank with one hypothesis: this mean and covariance, no step yet. */
export function openBank(mean: Float64Array, cov: Float64Array, search: StepSearch): Bank {
  const size = mean.length;
  const most = search.hypotheses;
  const bank: Bank = {
    size,
    search,
    used: 1,
    means: new Float64Array(most * size),
    covs: new Float64Array(most * size * size),
    weights: new Float64Array(most),
    stepDay: new Float64Array(most).fill(NEVER),
    mean: Float64Array.from(mean),
    cov: Float64Array.from(cov),
    logLikelihood: 0,
    misses: new Float64Array(most),
    spreads: new Float64Array(most),
    gains: new Float64Array(most * size),
    gain: new Float64Array(size),
  };
  bank.means.set(mean);
  bank.covs.set(cov);
  bank.weights[0] = 1;
  return bank;
}

/**
 * Moves every hypothesis one day on and, when the day has come, adds the one that maintenance stepped now: it starts from
 * the mixture, which must be up to date.
 */
export function bankPredict(bank: Bank, move: Transition, day: number, searching: boolean): void {
  const { size, search } = bank;
  if (searching && search.hypotheses > 1 && day > 0 && day % search.everyDays === 0) addStep(bank, day);
  for (let k = 0; k < bank.used; k++) predict(bank.means, k * size, bank.covs, k * size * size, size, move);
}

/**
 * By how much a reading misses what all hypotheses together expect, kg, and the variance of that, kg², into `out` = [miss, variance];
 * call before `bankCorrect`.
 */
export function bankExpect(
  bank: Bank,
  sight: Sight,
  scaleVar: number,
  reading: number,
  out: Float64Array,
): void {
  const { size } = bank;
  let mean = 0;
  for (let k = 0; k < bank.used; k++) {
    const miss = reading - seenBy(sight, bank.means, k * size, size);
    bank.misses[k] = miss;
    mean += at(bank.weights, k) * miss;
  }
  let variance = 0;
  for (let k = 0; k < bank.used; k++) {
    const spread = sightCovariance(bank.covs, k * size * size, size, sight, bank.gain) + scaleVar;
    bank.gains.set(bank.gain, k * size);
    bank.spreads[k] = spread;
    variance += at(bank.weights, k) * (spread + (at(bank.misses, k) - mean) ** 2);
  }
  out[0] = mean;
  out[1] = variance;
}

/** Takes the reading of the last `bankExpect` in, with `extraVar` more variance than the scale's own. */
export function bankCorrect(bank: Bank, extraVar: number): void {
  const { size } = bank;
  let best = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < bank.used; k++) {
    const spread = at(bank.spreads, k) + extraVar;
    const miss = at(bank.misses, k);
    for (let row = 0; row < size; row++) bank.gain[row] = at(bank.gains, k * size + row);
    correct(bank.means, k * size, bank.covs, k * size * size, size, bank.gain, miss, spread);
    const log = Math.log(at(bank.weights, k)) - (Math.log(2 * Math.PI * spread) + (miss * miss) / spread) / 2;
    bank.weights[k] = log;
    if (log > best) best = log;
  }
  let sum = 0;
  for (let k = 0; k < bank.used; k++) {
    const weight = Math.exp(at(bank.weights, k) - best);
    bank.weights[k] = weight;
    sum += weight;
  }
  for (let k = 0; k < bank.used; k++) bank.weights[k] = Math.max(1e-12, at(bank.weights, k) / sum);
  bank.logLikelihood += best + Math.log(sum);
}

/** Takes a reading of the tape in: it sees the last state, and `cmPerKg` of tissue beyond `fromKg`. */
export function bankTape(bank: Bank, cm: number, cmPerKg: number, fromKg: number, variance: number): void {
  const { size, means, covs, gains } = bank;
  const waist = size - 1;
  for (let k = 0; k < bank.used; k++) {
    const mean = k * size;
    for (let state = 0; state < size; state++) {
      const row = (mean + state) * size;
      gains[mean + state] = at(covs, row + waist) + cmPerKg * at(covs, row + MASS);
    }
    bank.misses[k] = cm - at(means, mean + waist) - cmPerKg * (at(means, mean + MASS) - fromKg);
    bank.spreads[k] = at(gains, mean + waist) + cmPerKg * at(gains, mean + MASS) + variance;
  }
  bankCorrect(bank, 0);
}

/** Adds variance to one state of every hypothesis: something outside the model moved it. */
export function bankLoosen(bank: Bank, state: number, variance: number): void {
  const { size } = bank;
  const diagonal = state * (size + 1);
  for (let k = 0; k < bank.used; k++) {
    const index = k * size * size + diagonal;
    bank.covs[index] = at(bank.covs, index) + variance;
  }
}

function addStep(bank: Bank, day: number): void {
  const { size, search } = bank;
  const slot = bank.used < search.hypotheses ? bank.used++ : drop(bank, day);
  bank.means.set(bank.mean, slot * size);
  bank.covs.set(bank.cov, slot * size * size);
  const index = slot * size * size + BASE * (size + 1);
  bank.covs[index] = at(bank.covs, index) + search.stepVar;
  bank.stepDay[slot] = day;
  for (let k = 0; k < bank.used; k++) bank.weights[k] = at(bank.weights, k) * (1 - search.chance);
  bank.weights[slot] = search.chance;
}

/** The least probable hypothesis that had its time, folded away; its probability goes to the others. */
function drop(bank: Bank, day: number): number {
  let slot = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < bank.used; k++) {
    const weight = at(bank.weights, k);
    const young = at(bank.stepDay, k) !== NEVER && day - at(bank.stepDay, k) < PROTECTED_DAYS;
    if (!young && weight < least) {
      least = weight;
      slot = k;
    }
  }
  const gone = at(bank.weights, slot);
  bank.weights[slot] = 0;
  for (let k = 0; k < bank.used; k++) bank.weights[k] = at(bank.weights, k) / (1 - gone);
  return slot;
}

/** Brings `mean` and `cov` of the bank up to date; left to the caller because once a day is enough. */
export function bankMix(bank: Bank): void {
  const { size, used, mean, cov, means, covs, weights } = bank;
  const square = size * size;
  if (used === 1) {
    for (let i = 0; i < size; i++) mean[i] = at(means, i);
    for (let i = 0; i < square; i++) cov[i] = at(covs, i);
    return;
  }
  mean.fill(0);
  cov.fill(0);
  for (let k = 0; k < used; k++) {
    const weight = at(weights, k);
    for (let i = 0; i < size; i++) mean[i] = at(mean, i) + weight * at(means, k * size + i);
  }
  for (let k = 0; k < used; k++) {
    const weight = at(weights, k);
    for (let i = 0; i < size; i++) {
      const gap = weight * (at(means, k * size + i) - at(mean, i));
      const row = k * square + i * size;
      for (let j = 0; j < size; j++)
        cov[i * size + j] =
          at(cov, i * size + j) + weight * at(covs, row + j) + gap * (at(means, k * size + j) - at(mean, j));
    }
  }
}
