import { energyKcal } from '../foods/atwater.ts';
import { has } from '../maintenance/day-table.ts';
import { FEW_LOGS } from '../maintenance/days.ts';
import type { BodyModel, Known } from '../maintenance/model.ts';
import { z90 } from '../trend/normal.ts';
import { dayNumber } from '../units/day-number.ts';
import { type Composition, readComposition } from './composition.ts';
import type { Recent } from './decide.ts';
import { type Dose, doseFrom, meanOfLast } from './dose.ts';
import { type Guards, guardsFor } from './guards.ts';
import type { CallInput } from './input.ts';

/** Everything the call reasons from, in numbers. */
export interface Situation {
  input: CallInput;
  model: BodyModel;
  lastDay: number;
  markG: number;
  pace: Known;
  pacePercent: Known;
  habit: Known;
  dose: Dose;
  /** The same if the plan were eaten as written. */
  written: Dose;
  guards: Guards;
  recent: Recent;
  composition: Composition;
  eating: EatingFinding;
  health: HealthFinding;
  weighInsLately: number;
}

interface EatingFinding {
  /** Logged over planned energy in the last two weeks, NaN without logs. */
  ratio: number;
  loggedDays: number;
  plannedKcal: number;
  loggedKcal: number;
  /** Off the plan by as much as ever: a log that always errs, or a habit; the call reckons with it. */
  habitual: boolean;
  offPlan: boolean;
  /** So far off that it can't be an error of the log alone. */
  farOff: boolean;
}

interface HealthFinding {
  bodyMassIndex: number;
  /** Losing faster than any plan should, beyond doubt. */
  veryFastLoss: boolean;
  /** Eating far too little by the log, two weeks long. */
  veryLowIntake: boolean;
  /** Body mass falls although the log says it should not. */
  unexplainedLoss: boolean;
  lowMass: boolean;
  /** Too low for anything but a stop. */
  veryLowMass: boolean;
  eatenPerFatFreeKg: number;
}

/** Days that the findings look back on (common practice, no source). */
const SPAN = 14;
/** A mean deviation of the log from the plan below this is eating luck (common practice, no source). */
export const OFF_PLAN = 0.07;
/**
 * A deviation that changes by less is the same one; one that is larger is no error of a log: most logs run 15 % short, some by
 * twice as much (common practice, no source).
 */
const STEADY = 0.08;
const FAR_OFF = 0.3;

/** Gathers the findings from the fitted model of the input's days. */
export function assess(input: CallInput, model: BodyModel): Situation {
  const lastDay = model.table.firstDay + model.table.count - 1;
  const pace = model.paceKgPerWeek(SPAN);
  const percent = 100 / model.tissueKg.mean;
  const habit = { mean: model.eating.habit, sd: model.eating.habitSd };
  const daysOnPlan = daysSincePlan(model, input.aim.since, lastDay);
  const guards = guardsFor(input, model, daysOnPlan);
  return {
    input,
    model,
    lastDay,
    markG: input.targets.carbohydrateG,
    pace,
    pacePercent: { mean: pace.mean * percent, sd: pace.sd * percent },
    habit,
    dose: doseFrom(model, input.targets, habit),
    written: doseFrom(model, input.targets, { mean: 1, sd: habit.sd }),
    guards,
    recent: { ...recentMoves(input, lastDay), lastWeek: model.paceKgPerWeek(7).mean * percent },
    composition: readComposition(input, lastDay, pace),
    eating: readEating(model, input),
    health: readHealth(input, model, guards, pace),
    weighInsLately: meanOfLast(model.table.weightKg, SPAN).count,
  };
}

/** Days since the plan began or, later than that, since its aim changed. */
function daysSincePlan(model: BodyModel, since: string | undefined, lastDay: number): number {
  const { table } = model;
  const sinceAim = since === undefined ? Number.POSITIVE_INFINITY : Math.max(0, lastDay - dayNumber(since));
  for (let row = 0; row < table.count; row++)
    if (has(table.prescribedKcal, row)) return Math.min(sinceAim, table.count - row);
  return 0;
}

function recentMoves(input: CallInput, lastDay: number): Omit<Recent, 'lastWeek'> {
  const recent: Omit<Recent, 'lastWeek'> = { daysSinceMove: Number.POSITIVE_INFINITY, lastDirection: 0 };
  let before = input.days.find((day) => day.prescribed)?.prescribed?.carbohydrateG;
  for (const call of input.calls) {
    const move = before === undefined ? 0 : call.inForceG - before;
    before = call.inForceG;
    if (Math.abs(move) < 1) continue;
    // A move for another aim says nothing about turning back now.
    if (input.aim.since !== undefined && call.day < input.aim.since) continue;
    const since = lastDay - dayNumber(call.day);
    // A clock that ran ahead dates a call into days to come.
    if (since < 0) continue;
    // A call dated the morning its mark began has been eaten for a whole week six days later.
    recent.daysSinceMove = since === 6 && daysAtMark(input) >= 7 ? 7 : since;
    recent.lastDirection = Math.sign(move);
  }
  return recent;
}

/** How many days in a row, up to the last, the mark in force was asked for. */
function daysAtMark({ days, targets }: CallInput): number {
  let count = 0;
  for (let index = days.length - 1; index >= 0; index--) {
    const prescribed = days[index]?.prescribed;
    if (!prescribed || Math.abs(prescribed.carbohydrateG - targets.carbohydrateG) >= 1) break;
    count++;
  }
  return count;
}

function readEating(model: BodyModel, input: CallInput): EatingFinding {
  const { table } = model;
  const lately = meanOfLast(table.loggedKcal, SPAN);
  const plannedLately = meanOfLast(table.prescribedKcal, SPAN).mean;
  const ratio = lately.mean / plannedLately;
  const before = ratioBefore(model);
  const farOff = lately.count >= FEW_LOGS && Math.abs(ratio - 1) >= FAR_OFF;
  return {
    ratio,
    loggedDays: lately.count,
    plannedKcal: Number.isNaN(plannedLately) ? energyKcal(input.targets) : plannedLately,
    loggedKcal: lately.mean,
    habitual: lately.count >= FEW_LOGS && Math.abs(before - ratio) < STEADY && !farOff,
    farOff,
    offPlan: lately.count >= FEW_LOGS && Math.abs(ratio - 1) > OFF_PLAN,
  };
}

/** Logged over planned energy in the four weeks before the last two; in a young plan of its first half. NaN with few logs. */
function ratioBefore({ table }: BodyModel): number {
  const recent = Math.min(SPAN, Math.floor(table.count / 2));
  const logged = meanOfLast(table.loggedKcal, 2 * SPAN, recent);
  return logged.count < FEW_LOGS - 1
    ? Number.NaN
    : logged.mean / meanOfLast(table.prescribedKcal, 2 * SPAN, recent).mean;
}

/** Lines beyond which a person should be seen, not steered. Body mass index: 17.5 and less is a sign of anorexia in ICD-10, F50.0 (from memory). */
const STOP_MASS_INDEX = 17.5;
/** Under this index an adult is underweight: WHO (from memory). */
const LOW_MASS_INDEX = 18.5;
/** Loss should not be faster than 1.5 % of body mass a week: Turocy PS et al. J Athl Train 2011;46:322–336 (second-hand). */
const VERY_FAST_LOSS = -1.5;
/** Energy eaten, kcal per kg of fat-free mass a day, and loss, % a week, where the log says that enough is eaten (common practice, no source). */
const VERY_LOW_PER_FAT_FREE_KG = 20;
const UNEXPLAINED_LOSS = -1;
/** Fewest weigh-ins in all, and full logs in two weeks, for such a finding (common practice, no source). */
const ENOUGH = { weighIns: 6, logs: 7 };

function readHealth(input: CallInput, model: BodyModel, guards: Guards, pace: Known): HealthFinding {
  const massKg = model.tissueKg.mean;
  const bodyMassIndex = massKg / (input.athlete.heightCm / 100) ** 2;
  const percent = { mean: (100 * pace.mean) / massKg, sd: (100 * pace.sd) / massKg };
  const logged = meanOfLast(model.table.loggedKcal, SPAN);
  const eaten = meanOfLast(model.table.everyMealKcal, SPAN);
  const eatenPerFatFreeKg = (eaten.mean - (input.athlete.exerciseKcal ?? 0)) / guards.fatFreeKg;
  const enough = model.table.count >= SPAN && model.weighIns >= ENOUGH.weighIns;
  const surelyFaster = (than: number) => enough && percent.mean + z90 * percent.sd < than;
  const start = model.filter.setup.maintenance;
  return {
    bodyMassIndex,
    lowMass: bodyMassIndex < LOW_MASS_INDEX,
    veryLowMass: bodyMassIndex <= STOP_MASS_INDEX,
    veryFastLoss: surelyFaster(VERY_FAST_LOSS),
    veryLowIntake: eaten.count >= ENOUGH.logs && eatenPerFatFreeKg < VERY_LOW_PER_FAT_FREE_KG,
    unexplainedLoss:
      surelyFaster(UNEXPLAINED_LOSS) &&
      logged.count >= ENOUGH.logs &&
      logged.mean > start.kcal + z90 * start.sd,
    eatenPerFatFreeKg,
  };
}
