import { energyKcal } from '../foods/atwater.ts';
import { dayNumber, has } from '../maintenance/days.ts';
import { type BodyModel, fitModel, type Known } from '../maintenance/model.ts';
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

export interface EatingFinding {
  /** Logged over planned energy in the last two weeks, NaN without logs. */
  ratio: number;
  loggedDays: number;
  plannedKcal: number;
  loggedKcal: number;
  /** Whether it was so in the weeks before as well. */
  habitual: boolean;
  offPlan: boolean;
}

export interface HealthFinding {
  bodyMassIndex: number;
  /** Losing faster than any plan should, beyond doubt. */
  veryFastLoss: boolean;
  /** Eating far too little by the log, two weeks long. */
  veryLowIntake: boolean;
  /** Body mass falls although the log says it should not. */
  unexplainedLoss: boolean;
  lowMass: boolean;
  loggedPerFatFreeKg: number;
}

const SPAN = 14;
/** A mean deviation of the log from the plan below this is eating luck. */
const OFF_PLAN = 0.07;
const FEW_LOGS = 4;

/** Fits the model and gathers the findings. Expects at least one weigh-in and checked input. */
export function assess(input: CallInput): Situation {
  const model = fitModel(input.athlete, input.days, input.targets, input.cycleStarts);
  const lastDay = model.table.firstDay + model.table.count - 1;
  const pace = model.paceKgPerWeek(SPAN);
  const percent = 100 / model.tissueKg.mean;
  const habit = { mean: model.eating.habit, sd: model.eating.habitSd };
  const daysOnPlan = daysSincePlan(model);
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
    recent: recentCalls(input, lastDay, daysOnPlan),
    composition: readComposition(input, lastDay, pace),
    eating: readEating(model, input),
    health: readHealth(input, model, guards, pace),
    weighInsLately: meanOfLast(model.table.weightKg, SPAN).count,
  };
}

function daysSincePlan(model: BodyModel): number {
  const { table } = model;
  for (let row = 0; row < table.count; row++) if (has(table.prescribedKcal, row)) return table.count - row;
  return 0;
}

function recentCalls(input: CallInput, lastDay: number, daysOnPlan: number): Recent {
  const recent: Recent = { daysSinceMove: Number.POSITIVE_INFINITY, lastDirection: 0, daysOnPlan };
  let before = input.days.find((day) => day.prescribed)?.prescribed?.carbohydrateG;
  for (const call of input.calls) {
    const move = before === undefined ? 0 : call.inForceG - before;
    before = call.inForceG;
    if (Math.abs(move) < 1) continue;
    recent.daysSinceMove = lastDay - dayNumber(call.day);
    recent.lastDirection = Math.sign(move);
  }
  return recent;
}

function readEating(model: BodyModel, input: CallInput): EatingFinding {
  const { table } = model;
  const lately = meanOfLast(table.loggedKcal, SPAN);
  const before = meanOfLast(table.loggedKcal, 2 * SPAN, SPAN);
  const plannedLately = meanOfLast(table.prescribedKcal, SPAN).mean;
  const plannedBefore = meanOfLast(table.prescribedKcal, 2 * SPAN, SPAN).mean;
  const ratio = lately.mean / plannedLately;
  const habitual = before.count >= 2 * FEW_LOGS && Math.abs(before.mean / plannedBefore - ratio) < 0.05;
  return {
    ratio,
    loggedDays: lately.count,
    plannedKcal: Number.isNaN(plannedLately) ? energyKcal(input.targets) : plannedLately,
    loggedKcal: lately.mean,
    habitual,
    offPlan: lately.count >= FEW_LOGS && Math.abs(ratio - 1) > OFF_PLAN,
  };
}

/** Lines beyond which a person should be seen, not steered (body mass index: WHO; the others common practice, no source). */
const LOW_MASS_INDEX = 18.5;
const VERY_FAST_LOSS = -1.75;
const VERY_LOW_PER_FAT_FREE_KG = 20;
const UNEXPLAINED_LOSS = -1;

function readHealth(input: CallInput, model: BodyModel, guards: Guards, pace: Known): HealthFinding {
  const massKg = model.tissueKg.mean;
  const bodyMassIndex = massKg / (input.athlete.heightCm / 100) ** 2;
  const percent = { mean: (100 * pace.mean) / massKg, sd: (100 * pace.sd) / massKg };
  const logged = meanOfLast(model.table.loggedKcal, SPAN);
  const loggedPerFatFreeKg = (logged.mean - (input.athlete.exerciseKcal ?? 0)) / guards.fatFreeKg;
  const enough = model.table.count >= SPAN && model.weighIns >= 6;
  const surelyFaster = (than: number) => enough && percent.mean + 1.645 * percent.sd < than;
  const start = model.filter.setup.maintenance;
  return {
    bodyMassIndex,
    lowMass: bodyMassIndex < LOW_MASS_INDEX,
    veryFastLoss: surelyFaster(VERY_FAST_LOSS),
    veryLowIntake: logged.count >= 7 && loggedPerFatFreeKg < VERY_LOW_PER_FAT_FREE_KG,
    unexplainedLoss:
      surelyFaster(UNEXPLAINED_LOSS) && logged.count >= 7 && logged.mean > start.kcal + 1.645 * start.sd,
    loggedPerFatFreeKg,
  };
}
