import { energyKcal } from '../foods/atwater.ts';
import { dayNumber } from '../units/day-number.ts';
import { feedStores, restingStores, storedKg } from './carbohydrate-water.ts';
import type { Beside, DayGrams, DayTable, ModelDay } from './day-table.ts';

/** Relative error of a day that was logged in full: weighing, labels, table values (common practice, no source). */
const LOG_ERROR = 0.05;
/** The same for a day that was not: how far people eat from the plan on a single day (common practice, no source). */
const NO_LOG_ERROR = 0.065;
/** Days over which an unlogged stretch is taken to err in one direction (common practice, no source). */
const LONGEST_RUN = 14;
/** A log's weight in the running ratio to the plan halves in so many days; the plan itself counts as so many logs (common practice, no source). */
const RATIO_HALF_LIFE = 21;
const PLAN_WEIGHT = 1;
/** With fewer full logs a habit is not told from one odd day or a log that was not finished (common practice, no source). */
export const FEW_LOGS = 4;
/** One day further off the plan than this was odd and says no more about the others (common practice, no source). */
const ODD_RATIO = { low: 0.7, high: 1.4 };
/** Sodium counts against a running mean of about so many days, and no further off it than so many mg (common practice, no source). */
const SODIUM_HABIT_DAYS = 21;
const MOST_SODIUM_MG = 4000;

/**
 * Lays the days out on the calendar, oldest first. `fallback` is eaten when neither log nor plan says what;
 * `maintenanceKcal` is the start estimate.
 */
export function layOutDays(
  days: readonly ModelDay[],
  fallback: DayGrams,
  maintenanceKcal: number,
  { cycleStarts = [], waist = [] }: Beside = {},
): DayTable {
  const firstDay = dayNumber(days[0]?.day ?? '1970-01-01');
  const lastDay = dayNumber(days.at(-1)?.day ?? '1970-01-01');
  const count = days.length === 0 ? 0 : lastDay - firstDay + 1;
  const column = () => new Float64Array(count).fill(Number.NaN);
  const table: DayTable = {
    count,
    firstDay,
    weightKg: column(),
    energyKcal: column(),
    energyVar: column(),
    loggedKcal: column(),
    everyMealKcal: column(),
    prescribedKcal: column(),
    waistCm: column(),
    knownWaterKg: column(),
    shiftVar: new Float64Array(count),
    unlikePlan: new Uint8Array(count),
    partial: new Uint8Array(count),
    cycleCos: new Float64Array(count),
    cycleSin: new Float64Array(count),
    stores: restingStores(habitualCarbohydrate(days, fallback, maintenanceKcal)),
    resolutionKg: resolutionOf(days),
  };
  const byRow = new Array<ModelDay | undefined>(count).fill(undefined);
  for (const day of days) byRow[dayNumber(day.day) - firstDay] = day;
  readIntake(table, byRow, fallback);
  readCycle(table, cycleStarts);
  for (const { day, cm } of waist) {
    const row = dayNumber(day) - firstDay;
    if (row >= 0 && row < count) table.waistCm[row] = cm;
  }
  return table;
}

function readIntake(table: DayTable, byRow: readonly (ModelDay | undefined)[], fallback: DayGrams): void {
  const forget = 0.5 ** (1 / RATIO_HALF_LIFE);
  let plan = byRow.find((day) => day?.prescribed)?.prescribed ?? fallback;
  let weight = PLAN_WEIGHT;
  let ratio = PLAN_WEIGHT;
  let sodiumHabit = Number.NaN;
  let run = 0;
  let logs = 0;
  for (let row = 0; row < table.count; row++) {
    const day = byRow[row];
    plan = day?.prescribed ?? plan;
    const planKcal = energyKcal(plan);
    table.knownWaterKg[row] = storedKg(table.stores);
    table.weightKg[row] = day?.weightKg ?? Number.NaN;
    if (day?.prescribed) table.prescribedKcal[row] = planKcal;
    const intake = day?.intake ?? null;
    const eatenKcal = intake ? energyKcal(intake) : 0;
    if (intake?.complete || intake?.everyMeal) table.everyMealKcal[row] = eatenKcal;
    const share = logs < FEW_LOGS ? 1 : ratio / weight;
    let carbohydrateG = plan.carbohydrateG * share;
    let energy = planKcal * share;
    let sodiumMg = 0;
    if (intake?.complete) {
      run = 0;
      logs++;
      energy = eatenKcal;
      carbohydrateG = intake.carbohydrateG;
      table.loggedKcal[row] = energy;
      table.energyVar[row] = (LOG_ERROR * Math.max(energy, planKcal / 2)) ** 2;
      weight = PLAN_WEIGHT + forget * (weight - PLAN_WEIGHT) + 1;
      ratio =
        PLAN_WEIGHT +
        forget * (ratio - PLAN_WEIGHT) +
        Math.max(ODD_RATIO.low, Math.min(ODD_RATIO.high, energy / Math.max(500, planKcal)));
      if (intake.sodiumMg !== undefined) {
        const from = Number.isNaN(sodiumHabit) ? intake.sodiumMg : sodiumHabit;
        sodiumMg = Math.max(-MOST_SODIUM_MG, Math.min(MOST_SODIUM_MG, intake.sodiumMg - from));
        sodiumHabit = from + (intake.sodiumMg - from) / SODIUM_HABIT_DAYS;
      }
    } else {
      run = Math.min(LONGEST_RUN, run + 1);
      if (intake) {
        table.partial[row] = 1;
        energy = Math.max(energy, eatenKcal);
        carbohydrateG = Math.max(carbohydrateG, intake.carbohydrateG);
      }
      // One direction within a run: the variance of the sum of k days is k² of one, so day k adds 2k − 1.
      table.energyVar[row] = (2 * run - 1) * (NO_LOG_ERROR * planKcal) ** 2;
    }
    table.energyKcal[row] = energy;
    feedStores(table.stores, carbohydrateG, sodiumMg);
  }
}

/**
 * Carbohydrate that the stores were at rest with, g/d. Days before the plan tell; else the plan is taken to be new and the
 * habit before it to be an ordinary share of maintenance, with some weight on the first week in case it is not.
 */
function habitualCarbohydrate(
  days: readonly ModelDay[],
  fallback: DayGrams,
  maintenanceKcal: number,
): number {
  const week = days.slice(0, 7);
  const before = week.filter((day) => day.prescribed === null && day.intake?.complete);
  const ofWeek = meanCarbohydrate(
    week.map((day) => (day.intake?.complete ? day.intake : day.prescribed) ?? fallback),
  );
  if (before.length >= 3) return meanCarbohydrate(before.map((day) => day.intake ?? fallback));
  return ofWeek ** FIRST_WEEK_WEIGHT * ((USUAL_SHARE * maintenanceKcal) / 4) ** (1 - FIRST_WEEK_WEIGHT);
}

function meanCarbohydrate(days: readonly DayGrams[]): number {
  return days.reduce((sum, grams) => sum + grams.carbohydrateG, 0) / Math.max(1, days.length);
}

/** Share of energy that people eat as carbohydrate: low end of the AMDR, 45 to 65 % (IOM 2005), up a little; and the weight of the first week (common practice, no source). */
const USUAL_SHARE = 0.48;
const FIRST_WEEK_WEIGHT = 0.25;

/** 1, 0.5 or 0.2 kg when all readings, eight or more, lie on that grid, else 0.1 (common practice, no source). */
function resolutionOf(days: readonly ModelDay[]): number {
  const readings = days.flatMap((day) => (day.weightKg === null ? [] : [day.weightKg]));
  if (readings.length < 8) return 0.1;
  const onGrid = (step: number) => readings.every((kg) => Math.abs(kg / step - Math.round(kg / step)) < 1e-6);
  return [1, 0.5, 0.2].find(onGrid) ?? 0.1;
}

/** Length of a cycle until two starts tell it, and between which lengths they do (common practice, no source). */
const USUAL_CYCLE_DAYS = 28;
const CYCLE_DAYS = { least: 18, most: 50 };

function readCycle(table: DayTable, cycleStarts: readonly string[]): void {
  const starts = cycleStarts.map(dayNumber).sort((a, b) => a - b);
  if (starts.length === 0) return;
  let next = 0;
  for (let row = 0; row < table.count; row++) {
    const day = table.firstDay + row;
    while (next < starts.length && (starts[next] ?? 0) <= day) next++;
    const start = starts[next - 1] ?? (starts[0] ?? day) - 10 * USUAL_CYCLE_DAYS;
    const known = (starts[next] ?? Number.NaN) - start;
    const length =
      next > 0 && known >= CYCLE_DAYS.least && known <= CYCLE_DAYS.most ? known : USUAL_CYCLE_DAYS;
    const phase = (2 * Math.PI * (day - start)) / length;
    table.cycleCos[row] = Math.cos(phase);
    table.cycleSin[row] = Math.sin(phase);
  }
}
