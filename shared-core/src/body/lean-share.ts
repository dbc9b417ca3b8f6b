import { eatenKcalPerKg, leanShareOfChange } from '../maintenance/energy-density.ts';
import type { Known } from '../maintenance/model.ts';
import { keepPerKg } from '../maintenance/open-filter.ts';
import { waistCmPerFatKg } from '../maintenance/tape.ts';
import { type Estimate, estimate } from '../trend/estimate.ts';
import { z90 } from '../trend/normal.ts';

/** What is known of a window of weeks; a piece that is missing is null. */
export interface LeanShareEvidence {
  weeks: number;
  /** Fat mass at its start, kg. */
  fatKg: number;
  /** Change of tissue over the window from the bodyweight line, water taken out, kg. */
  tissueKg: Known;
  /** Energy eaten over the window less maintenance from before it, kcal. */
  energyKcal: Known | null;
  /** Change of the waist over the window, cm. */
  waistCm: Known | null;
}

export interface LeanShare {
  leanKg: Estimate;
  fatKg: Estimate;
  /** Lean part of the change, 0 to 1. Null when the change itself cannot be told from none. */
  share: Estimate | null;
}

/** How far trained people lie from the Forbes curve, as a share of the change (common practice, no source). */
const SHARE_SD = 0.2;
/** Lean gained for fat lost or the reverse that a standing body mass hides, kg a week (common practice, no source). */
const EXCHANGE_SD = 0.05;

/**
 * How a change of tissue splits into lean and fat. The Forbes curve says what to expect (leanShareOfChange), energy and
 * tape correct it by Bayes' rule: a kilogram of fat holds five times the energy of a kilogram of lean tissue, and only fat
 * shows on the waist. Interval of the share by Fieller EC. J R Stat Soc B 1954;16:175–185 (from memory).
 */
export function leanShare(evidence: LeanShareEvidence): LeanShare {
  const { fatKg, tissueKg, weeks } = evidence;
  const usual = leanShareOfChange(fatKg);
  // Lean change = usual · change + exchange; both unknowns start independent.
  const belief: Belief = {
    change: tissueKg.mean,
    exchange: 0,
    changeVar: tissueKg.sd ** 2,
    exchangeVar: (SHARE_SD * tissueKg.mean) ** 2 + (EXCHANGE_SD * weeks) ** 2,
    covariance: 0,
  };
  const fatOf = { change: 1 - usual, exchange: -1 };
  if (evidence.waistCm) {
    const expectedFat = fatOf.change * belief.change;
    const { mean, sd } = waistCmPerFatKg;
    const variance = evidence.waistCm.sd ** 2 + (sd * expectedFat) ** 2;
    learn(belief, mean * fatOf.change, mean * fatOf.exchange, evidence.waistCm.mean, variance);
  }
  if (evidence.energyKcal) {
    // Maintenance follows body mass: on average over the window by half of the change.
    const upkeep = (7 * weeks * keepPerKg) / 2;
    const perChange = (1 - usual) * eatenKcalPerKg.fat + usual * eatenKcalPerKg.lean + upkeep;
    const { mean, sd } = evidence.energyKcal;
    learn(belief, perChange, eatenKcalPerKg.lean - eatenKcalPerKg.fat, mean, sd ** 2);
  }
  const lean = combination(belief, usual, 1);
  return {
    leanKg: estimate(lean.mean, Math.sqrt(lean.variance)),
    fatKg: fatSpread(belief, fatOf),
    share: ratio(lean, belief, usual),
  };
}

interface Belief {
  change: number;
  exchange: number;
  changeVar: number;
  exchangeVar: number;
  covariance: number;
}

/** Takes in a reading of a·change + b·exchange: one step of a Kalman filter, in place. */
function learn(belief: Belief, a: number, b: number, reading: number, variance: number): void {
  const withChange = a * belief.changeVar + b * belief.covariance;
  const withExchange = a * belief.covariance + b * belief.exchangeVar;
  const total = a * withChange + b * withExchange + variance;
  const miss = (reading - a * belief.change - b * belief.exchange) / total;
  belief.change += withChange * miss;
  belief.exchange += withExchange * miss;
  belief.changeVar -= withChange ** 2 / total;
  belief.exchangeVar -= withExchange ** 2 / total;
  belief.covariance -= (withChange * withExchange) / total;
}

function combination(belief: Belief, a: number, b: number): { mean: number; variance: number } {
  return {
    mean: a * belief.change + b * belief.exchange,
    variance: a * a * belief.changeVar + 2 * a * b * belief.covariance + b * b * belief.exchangeVar,
  };
}

function fatSpread(belief: Belief, fatOf: { change: number; exchange: number }): Estimate {
  const fat = combination(belief, fatOf.change, fatOf.exchange);
  return estimate(fat.mean, Math.sqrt(fat.variance));
}

/** Lean change over whole change: all r for which lean − r·change is within z90 deviations of nothing. */
function ratio(lean: { mean: number; variance: number }, belief: Belief, usual: number): Estimate | null {
  const both = usual * belief.changeVar + belief.covariance;
  const square = belief.change ** 2 - z90 ** 2 * belief.changeVar;
  if (square <= 0) return null;
  const cross = lean.mean * belief.change - z90 ** 2 * both;
  const rest = lean.mean ** 2 - z90 ** 2 * lean.variance;
  const reach = Math.sqrt(Math.max(0, cross ** 2 - square * rest));
  const share = (value: number) => Math.min(1, Math.max(0, value));
  return {
    mean: share(lean.mean / belief.change),
    interval90: { low: share((cross - reach) / square), high: share((cross + reach) / square) },
  };
}
