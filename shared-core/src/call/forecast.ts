import { at } from '../maintenance/at.ts';
import { feedStores, storedKg } from '../maintenance/carbohydrate-water.ts';
import { stepShare } from '../maintenance/filter.ts';
import type { BodyModel, Known } from '../maintenance/model.ts';
import { lineVariance } from '../maintenance/smoother.ts';
import { BASE, linearise, MASS, predict, RESPONSE } from '../maintenance/state.ts';
import { estimate } from '../trend/estimate.ts';
import { isoDay } from '../units/day-number.ts';
import type { Dose } from './dose.ts';
import type { CallForecast, ForecastFan } from './output.ts';

const DAYS = 28;
/** How far a day's eating strays from its average: relative standard deviation of a whole week (common practice, no source). */
const WEEK_OF_EATING_SD = 0.025;
/** How many times the usual steps of maintenance are allowed for: lives differ in it, and what is to come no reading tells (common practice, no source; set on virtual athletes). */
const STEPS_AHEAD = 3;
/** How unsure it is that water to come follows the response that water so far had, as a share (common practice, no source). */
const RESPONSE_DOUBT = 0.2;

/** The forecast at two marks. */
export function forecastBoth(
  model: BodyModel,
  dose: Dose,
  habit: Known,
  newMarkG: number,
  oldMarkG: number,
): CallForecast {
  return {
    atNewMark: forecastAt(model, dose, habit, newMarkG),
    atOldMark: forecastAt(model, dose, habit, oldMarkG),
  };
}

/**
 * Body mass over the next four weeks at a mark, on average eating: what a scale would show on an average morning, with a
 * 90 % interval that holds what is not known of maintenance, its drift and steps, eating luck and the response of water.
 * Costs microseconds, for a slider.
 */
export function forecastAt(model: BodyModel, dose: Dose, habit: Known, markG: number): ForecastFan {
  const { bank, setup, sight } = model.filter;
  const { size } = bank;
  const move = { ...model.filter.move, energyKcal: dose.energyAt(markG) };
  const eatingSd = move.energyKcal * WEEK_OF_EATING_SD;
  move.massVar = (move.kgPerKcal * eatingSd) ** 2 * 7;
  move.baseVar = setup.driftVar + STEPS_AHEAD * stepShare(setup.search);
  const mean = Float64Array.from(bank.mean);
  const cov = Float64Array.from(bank.cov);
  const habitVar = (habit.sd * move.energyKcal) ** 2;
  cov[BASE * (size + 1)] = at(cov, BASE * (size + 1)) + habitVar;
  const stores = { ...model.table.stores };
  const nowKg = storedKg(stores);
  const start = at(mean, MASS);
  const { smoothed, table } = model;
  const today = table.count - 1;
  const points: ForecastFan['points'] = [];
  const add = (ahead: number, massKg: number, variance: number) =>
    points.push({
      day: isoDay(table.firstDay + today + ahead),
      massKg: estimate(massKg, Math.sqrt(variance)),
    });
  add(0, at(smoothed.line, today), at(smoothed.lineVar, today));
  let weekTwo = start;
  // The filter stands on the morning after the last day.
  for (let ahead = 1; ahead <= DAYS; ahead++) {
    if (ahead > 1) {
      linearise(mean, 0, move);
      predict(mean, 0, cov, 0, size, move);
      feedStores(stores, habit.mean * markG, 0);
    }
    if (ahead === 7) weekTwo = at(mean, MASS);
    const waterKg = storedKg(stores);
    const zeroKg = sight.zero < 0 ? 0 : at(mean, sight.zero);
    const variance = lineVariance(cov, size, waterKg, sight.zero) + (RESPONSE_DOUBT * (waterKg - nowKg)) ** 2;
    add(ahead, at(mean, MASS) + waterKg * at(mean, RESPONSE) + zeroKg, variance);
  }
  const pace = dose.paceAt(markG);
  const later = (100 * (at(mean, MASS) - weekTwo)) / 3 / start;
  return { markG, pacePercentPerWeek: estimate(later, pace.sd), points };
}
