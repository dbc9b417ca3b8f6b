import type { Aim, CallDay, CallInput, EarlierCall, MacroGrams } from '@platewright/core/call/input.ts';
import { type EatingLuck, eatingLuck, shiftsOfLife } from './life.ts';
import { instrumentErrors, readScale, readTape } from './observation.ts';
import {
  type Body,
  energyForPace,
  KCAL_PER_MJ,
  liveOneDay,
  maintenanceOf,
  massOf,
  paceAt,
  tissueOf,
} from './plant.ts';
import type { VirtualAthlete } from './population.ts';
import type { Scenario, Stretch } from './scenarios.ts';
import { strengthOf } from './strength.ts';
import type { World } from './variants.ts';

export interface Estimate {
  mean: number;
  low: number;
  high: number;
}

export interface Answer {
  verdict: string;
  carbohydrateG: number;
  /** % of body mass a week. */
  pace?: Estimate;
  /** Pace to expect at the mark in force on average eating, % a week. */
  expectedPace?: Estimate;
  maintenanceKcal?: Estimate;
}

/** What only an oracle sees at the call. */
export interface Truth {
  /** The mark that would give this pace on average eating. */
  markForPace(pacePercent: number): number;
}

export type Controller = (input: CallInput, truth: Truth) => Answer;

/** One day as it really was, kept for the judge. */
export interface TrueDay {
  tissueKg: number;
  fatKg: number;
  massKg: number;
  /** Pace the mark of the day would give on average eating, % a week. */
  dosePace: number;
  aim: Aim;
}

export interface TrueCall {
  /** Index of the last day before the call. */
  day: number;
  answer: Answer;
  markBeforeG: number;
  markAfterG: number;
  /** In the athlete's own units: what the log would read at maintenance. */
  maintenanceKcal: number;
  /** What the mark in force would give on average eating with today's body, % a week. */
  expectedPace: number;
  aim: Aim;
}

export interface Run {
  startTissueKg: number;
  days: TrueDay[];
  calls: TrueCall[];
}

const FIRST_DAY = Date.UTC(2025, 0, 6);
const ISO_DAYS = Array.from({ length: 400 }, (_, day) =>
  new Date(FIRST_DAY + day * 86_400_000).toISOString().slice(0, 10),
);
const isoDay = (day: number) => ISO_DAYS[day] ?? '';

/** The practice's start: quota 3.3 g/kg, mark 1.75 × quota, fat 1 g/kg (common practice, no source). */
export function startByRule(massKg: number): MacroGrams {
  const proteinG = Math.round(3.3 * massKg);
  return { proteinG, carbohydrateG: Math.round(1.75 * proteinG), fatG: Math.round(massKg) };
}

const kcalOf = (grams: MacroGrams) => 4 * grams.proteinG + 4 * grams.carbohydrateG + 9 * grams.fatG;

/** Runs one athlete through a scenario with a call at the end of each week; every call is accepted. */
export function closedLoop(
  athlete: VirtualAthlete,
  scenario: Scenario,
  world: World,
  controller: Controller,
): Run {
  const lengths = scenario.stretches.map((stretch) => 7 * stretch.weeks);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const shifts = shiftsOfLife(athlete, total, world);
  const luck = eatingLuck(athlete, total, world.eating, scenario.diligence);
  const errors = instrumentErrors(athlete, total, world.scale, scenario.diligence);
  const setsOf = strengthOf(athlete);
  const body: Body = { ...athlete.start };
  const targets = startByRule(readScale({ ...errors, missing: new Uint8Array(total) }, 0, massOf(body)) ?? 0);
  const { sex, ageYears, heightCm, fatPercent } = athlete.profile;
  const days: CallDay[] = [];
  const waist: { day: string; cm: number }[] = [];
  const keyLifts: { day: string; lift: string; loadKg: number; repetitions: number }[] = [];
  const earlier: EarlierCall[] = [];
  const run: Run = { startTissueKg: tissueOf(body), days: [], calls: [] };

  for (let day = 0; day < total; day++) {
    const shiftMj = (shifts[day] ?? 0) / KCAL_PER_MJ;
    const prescribed = { ...targets };
    const eaten = eat(prescribed, luck, day);
    const morningKg = massOf(body);
    const cm = readTape(errors, day, body.fatKg - athlete.start.fatKg);
    if (cm !== null) waist.push({ day: isoDay(day), cm });
    for (const set of setsOf(day, body.leanKg - athlete.start.leanKg))
      keyLifts.push({ day: isoDay(day), ...set });
    const doseKcal = kcalOf(prescribed) * luck.average;
    const aim = aimOn(scenario.stretches, day);
    const dosePace = paceAt(athlete.plant, body, doseKcal, shiftMj);
    liveOneDay(athlete.plant, body, {
      energyMj: kcalOf(eaten) / KCAL_PER_MJ,
      carbohydrateMj: (4 * eaten.carbohydrateG) / KCAL_PER_MJ,
      sodiumMg: errors.sodiumMg[day] ?? 0,
      shiftMj,
    });
    const massKg = massOf(body);
    const weightKg = readScale(errors, day, world.weighsAfterEating ? massKg : morningKg);
    days.push({ day: isoDay(day), weightKg, intake: log(eaten, luck, day), prescribed });
    run.days.push({ tissueKg: tissueOf(body), fatKg: body.fatKg, massKg, dosePace, aim });

    if (day % 7 !== 6 || day + 1 >= total) continue;
    const nextAim = aimOn(scenario.stretches, day + 1);
    const input: CallInput = {
      athlete: { sex, ageYears, heightCm, ...(fatPercent === undefined ? {} : { fatPercent }) },
      aim: nextAim,
      targets: {
        ...targets,
        fatFloorG: Math.min(targets.fatG, Math.round(0.7 * athlete.profile.massKg)),
        carbohydrateBand: { lowG: 1.5 * targets.proteinG, highG: 2 * targets.proteinG },
      },
      days,
      waist,
      keyLifts,
      calls: earlier,
    };
    const answer = controller(input, {
      markForPace: (pace) => {
        const energy = energyForPace(athlete.plant, body, pace, shiftMj) / luck.average;
        return (energy - 4 * targets.proteinG - 9 * targets.fatG) / 4;
      },
    });
    const markBeforeG = targets.carbohydrateG;
    targets.carbohydrateG = answer.verdict === 'not-enough' ? markBeforeG : answer.carbohydrateG;
    earlier.push({
      day: isoDay(day),
      decision: 'accepted',
      proposedG: targets.carbohydrateG,
      inForceG: targets.carbohydrateG,
    });
    run.calls.push({
      day,
      answer,
      markBeforeG,
      markAfterG: targets.carbohydrateG,
      maintenanceKcal: maintenanceOf(athlete.plant, body, shiftMj) * luck.reported,
      expectedPace: paceAt(
        athlete.plant,
        body,
        kcalOf({ ...targets, carbohydrateG: markBeforeG }) * luck.average,
        shiftMj,
      ),
      aim: nextAim,
    });
  }
  return run;
}

function aimOn(stretches: readonly Stretch[], day: number): Aim {
  let first = 0;
  for (const stretch of stretches) {
    if (day < first + 7 * stretch.weeks) return { ...stretch.aim, since: isoDay(first) };
    first += 7 * stretch.weeks;
  }
  throw new Error(`no aim on day ${day}`);
}

/** The deviation from the plan falls on carbohydrate and fat, a little on protein. */
function eat(prescribed: MacroGrams, luck: EatingLuck, day: number): MacroGrams {
  const deviationKcal = kcalOf(prescribed) * ((luck.eaten[day] ?? 1) - 1);
  const onProtein = 0.15;
  const onCarbohydrate = (1 - onProtein) * (luck.onCarbohydrate[day] ?? 0.6);
  const carbohydrateG = Math.max(10, prescribed.carbohydrateG + (onCarbohydrate * deviationKcal) / 4);
  return {
    proteinG: Math.max(10, prescribed.proteinG + (onProtein * deviationKcal) / 4),
    carbohydrateG,
    fatG: Math.max(5, prescribed.fatG + ((1 - onProtein - onCarbohydrate) * deviationKcal) / 9),
  };
}

function log(eaten: MacroGrams, luck: EatingLuck, day: number): CallDay['intake'] {
  if (luck.missing[day]) return null;
  const half = luck.half[day] === 1;
  const share = (luck.logged[day] ?? 1) * (half ? 0.5 : 1);
  return {
    proteinG: Math.round(eaten.proteinG * share),
    carbohydrateG: Math.round(eaten.carbohydrateG * share),
    fatG: Math.round(eaten.fatG * share),
    complete: !half,
  };
}
