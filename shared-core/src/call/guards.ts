import { fatFreeKg } from '../body/fat-free-mass.ts';
import { energyKcal } from '../foods/atwater.ts';
import { storedKg } from '../maintenance/carbohydrate-water.ts';
import { availabilityLevels, energyAvailability } from '../maintenance/energy-availability.ts';
import type { BodyModel } from '../maintenance/model.ts';
import type { CallInput } from './input.ts';

/** Lines that no call crosses. */
export interface Guards {
  fatFreeKg: number;
  /** Energy availability of the plan in force, kcal per kg of fat-free mass a day. */
  availability: number;
  /** The mark that leaves the guard of energy availability, g. */
  availabilityFloorG: number;
  /** The mark's own floor and ceiling, g. */
  floorG: number;
  ceilingG: number;
  /** Largest move of this call, g. */
  stepG: number;
  /** Aim and band, kept within what a call will drive at. */
  aim: number;
  band: { low: number; high: number };
}

/** Least carbohydrate a call asks for, g a day (common practice, no source). */
const LEAST_MARK_G = 30;
/** Upper end of what athletes with hours of training a day eat: 12 g/kg. Thomas DT et al. Med Sci Sports Exerc 2016;48:543–568. */
const MOST_G_PER_KG = 12;
/** Beyond this, % of body mass a week, some of a loss is probably muscle: Helms ER et al. J Int Soc Sports Nutr 2014;11:20, 0.5 to 1 %. */
export const FAST_LOSS = -1;
/** No call drives at more than this, % of body mass a week; gain common practice, no source. */
const FASTEST = { loss: FAST_LOSS, gain: 0.75 };
/** Largest moves in g a day, until day 24 of the plan, until day 45, and later: a start by rule may be far off (common practice, no source). */
const STEPS = { firstWeeks: 300, nextWeeks: 80, later: 60 };

/** What a call drives at for an aim, both % of body mass a week: one that is faster than any call goes is held back. */
export function drivenPace(aimPercentPerWeek: number): number {
  return Math.min(FASTEST.gain, Math.max(FASTEST.loss, aimPercentPerWeek));
}

function massOnScale(model: BodyModel): number {
  const water = storedKg(model.table.stores) * model.smoothed.response.mean;
  return model.tissueKg.mean + Math.max(0, water) + Math.max(0, model.smoothed.zero.at(-1) ?? 0);
}

/** Reckons the guards for this athlete and day. `daysOnPlan` counts days since the plan, or its aim of now, began. */
export function guardsFor(input: CallInput, model: BodyModel, daysOnPlan: number): Guards {
  const { targets, athlete, aim } = input;
  const massKg = model.tissueKg.mean;
  const { startFatKg, startMassKg } = model.filter.setup;
  const leanKg = fatFreeKg({ massKg: startMassKg, fatKg: startFatKg }, massKg, massOnScale(model));
  const exerciseKcal = athlete.exerciseKcal ?? 0;
  const withoutMark = energyKcal({ ...targets, carbohydrateG: 0 });
  const availabilityFloorG = (availabilityLevels.low * leanKg + exerciseKcal - withoutMark) / 4;
  const floorG = Math.max(LEAST_MARK_G, availabilityFloorG);
  const driven = drivenPace(aim.pacePercentPerWeek);
  return {
    fatFreeKg: leanKg,
    availability: energyAvailability(energyKcal(targets), exerciseKcal, leanKg),
    availabilityFloorG,
    floorG: Math.ceil(floorG / 5) * 5,
    ceilingG: Math.max(Math.ceil(floorG / 5) * 5, Math.floor((MOST_G_PER_KG * massKg) / 5) * 5),
    stepG: daysOnPlan <= 24 ? STEPS.firstWeeks : daysOnPlan <= 45 ? STEPS.nextWeeks : STEPS.later,
    aim: driven,
    // The band moves with an aim that is held back, so that the call judges by what it drives at.
    band: {
      low: aim.band.low + driven - aim.pacePercentPerWeek,
      high: aim.band.high + driven - aim.pacePercentPerWeek,
    },
  };
}
