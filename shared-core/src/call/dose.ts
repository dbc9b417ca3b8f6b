import { energyKcal } from '../foods/atwater.ts';
import { at } from '../maintenance/at.ts';
import type { BodyModel, Known } from '../maintenance/model.ts';
import { maintenanceVariance } from '../maintenance/smoother.ts';
import {
  ADAPT,
  ADAPT_KEEP,
  ADAPT_SHARE,
  BASE,
  DENSITY,
  MASS,
  maintenanceOf,
  type Transition,
} from '../maintenance/state.ts';
import { normalBelow } from '../trend/normal.ts';
import type { Aim, TargetsInForce } from './input.ts';

/** What a mark is expected to do, with the plan's protein and fat, on average eating. */
export interface Dose {
  /** Pace to expect at a mark, % of body mass a week. */
  paceAt(markG: number): Known;
  /** The mark whose expected pace is this, g; may lie anywhere. */
  markFor(pacePercent: number): number;
  /** kcal a day eaten on average at a mark, in units of the log. */
  energyAt(markG: number): number;
  /**
   * Probabilities that the pace at a mark lies under, in and over the band; with `lastWeek`, the pace of the last seven days in % a
   * week, those for the two weeks that one on the mark completes.
   */
  chancesAt(markG: number, band: Aim['band'], lastWeek?: number): Chances;
}

interface Chances {
  below: number;
  inside: number;
  above: number;
}

/**
 * Days to look ahead: maintenance follows intake and body mass within weeks, so the mark that is right today is wrong by the
 * time it shows. A mark stands for a week at least, and not much longer in the first weeks (common practice, no source).
 */
const AHEAD_DAYS = 5;
/** No dose is known better than this, kcal/d: the drift of a few days (common practice, no source). */
const LEAST_KCAL_SD = 15;

/** Reckons doses from the model; `habit` is eaten over planned energy on average and its standard deviation. */
export function doseFrom(model: BodyModel, targets: TargetsInForce, habit: Known): Dose {
  const { move, bank } = model.filter;
  const { size } = bank;
  const energyAt = (markG: number) => habit.mean * energyKcal({ ...targets, carbohydrateG: markG });
  const paceOf = (mean: Float64Array, cov: Float64Array) => {
    const known = paceOfState(mean, cov, move, habit);
    return (markG: number) => known(energyAt(markG));
  };
  const paceAt = paceOf(bank.mean, bank.cov);
  // Either maintenance stepped or it did not: two places, and what lies between them may be likely for neither.
  const cases = Array.from({ length: bank.used }, (_, k) => ({
    weight: at(bank.weights, k),
    paceAt: paceOf(
      bank.means.subarray(k * size, (k + 1) * size),
      bank.covs.subarray(k * size * size, (k + 1) * size * size),
    ),
  }));
  const without = paceAt(0).mean;
  const perG = paceAt(1).mean - without;
  return {
    paceAt,
    energyAt,
    markFor: (pace) => (pace - without) / perG,
    chancesAt: (markG, band, lastWeek) => {
      let below = 0;
      let above = 0;
      for (const { weight, paceAt } of cases) {
        const ahead = paceAt(markG);
        // What is unsure is maintenance, which errs alike in both weeks: their mean is as unsure as one of them.
        const { sd } = ahead;
        const mean = lastWeek === undefined ? ahead.mean : (lastWeek + ahead.mean) / 2;
        below += weight * normalBelow((band.low - mean) / sd);
        above += weight * (1 - normalBelow((band.high - mean) / sd));
      }
      return { below, inside: Math.max(0, 1 - below - above), above };
    },
  };
}

/** Pace to expect, % of body mass a week, for energy eaten on average, kcal, if the body is in this state. */
function paceOfState(
  mean: Float64Array,
  cov: Float64Array,
  move: Transition,
  habit: Known,
): (energyKcal: number) => Known {
  const maintenance = maintenanceOf(mean, 0, move);
  const size = mean.length;
  const maintenanceVar = maintenanceVariance(cov, size, move.keepPerKg);
  const density = 1 + at(mean, DENSITY);
  const percentPerKcal = (700 * move.kgPerKcal) / at(mean, MASS);
  // Surplus that is left after maintenance has followed: kept share of today's surplus, less what is on its way already.
  const followed = 1 - ADAPT_KEEP ** AHEAD_DAYS;
  const adapt = at(mean, ADAPT);
  const byMass = maintenance - at(mean, BASE) - adapt;
  const kept = 1 - followed * ADAPT_SHARE - move.keepPerKg * move.kgPerKcal * AHEAD_DAYS;
  const coming = followed * (ADAPT_SHARE * (adapt + byMass) - adapt);
  const withDensity = (state: number) => at(cov, DENSITY * size + state);
  const joint = withDensity(BASE) + withDensity(ADAPT) + move.keepPerKg * withDensity(MASS);
  return (energy) => {
    const surplus = kept * (energy - maintenance) - coming;
    const balanceVar = kept ** 2 * (maintenanceVar + ((energy * habit.sd) / habit.mean) ** 2);
    // Maintenance and density err together: what the body did so far tells their combination best.
    const variance =
      density ** 2 * balanceVar + surplus ** 2 * withDensity(DENSITY) - 2 * density * surplus * kept * joint;
    return {
      mean: percentPerKcal * density * surplus,
      sd: percentPerKcal * Math.sqrt(Math.max(variance, density ** 2 * LEAST_KCAL_SD ** 2)),
    };
  };
}

/** Mean of the numbers in `days` rows of a column, the last ones or those `before` rows further back; NaN when there are none. */
export function meanOfLast(column: Float64Array, days: number, before = 0): { mean: number; count: number } {
  let sum = 0;
  let count = 0;
  for (let row = Math.max(0, column.length - days - before); row < column.length - before; row++) {
    const value = at(column, row);
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return { mean: count > 0 ? sum / count : Number.NaN, count };
}
