import type { Aim, CallInput, EarlierCall } from '@platewright/core/call/input.ts';
import type { ModelDay } from '@platewright/core/maintenance/day-table.ts';
import { eatingLuck, shiftsOfLife } from './life.ts';
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
import { eat, kcalOf, startByRule, writeLog } from './plate.ts';
import type { VirtualAthlete } from './population.ts';
import type { Controller, Run } from './run-types.ts';
import type { Scenario, Stretch } from './scenarios.ts';
import { strengthOf } from './strength.ts';
import type { World } from './variants.ts';

const FIRST_DAY = Date.UTC(2025, 0, 6);
const ISO_DAYS = Array.from({ length: 400 }, (_, day) =>
  new Date(FIRST_DAY + day * 86_400_000).toISOString().slice(0, 10),
);
const isoDay = (day: number) => ISO_DAYS[day] ?? '';

/** Runs one athlete through a scenario with a call each week; every call is accepted. */
export function closedLoop(
  athlete: VirtualAthlete,
  scenario: Scenario,
  world: World,
  controller: Controller,
): Run {
  const { plant, profile } = athlete;
  const total = scenario.stretches.reduce((sum, { weeks }) => sum + 7 * weeks, 0);
  const shifts = shiftsOfLife(athlete, total, world);
  const luck = eatingLuck(athlete, total, world.eating, scenario.diligence);
  const errors = instrumentErrors(athlete, total, world.scale, scenario.diligence);
  const setsOf = strengthOf(athlete);
  const body: Body = { ...athlete.start };
  const targets = startByRule(massOf(body));
  const { sex, ageYears, heightCm, fatPercent } = profile;
  const days: ModelDay[] = [];
  const waist: { day: string; cm: number }[] = [];
  const keyLifts: { day: string; lift: string; loadKg: number; repetitions: number }[] = [];
  const calls: EarlierCall[] = [];
  const known = {
    sex,
    ageYears,
    heightCm,
    ...(fatPercent === undefined || world.terse ? {} : { fatPercent }),
  };
  const run: Run = { startTissueKg: tissueOf(body), days: [], calls: [] };

  const measure = (day: number) => {
    const cm = readTape(errors, day, body.fatKg - athlete.start.fatKg);
    if (world.terse) return;
    if (cm !== null) waist.push({ day: isoDay(day), cm });
    for (const set of setsOf(day, body.leanKg - athlete.start.leanKg))
      keyLifts.push({ day: isoDay(day), ...set });
  };

  /** Lets the controller call with what was told so far; the mark is in force from `day` on. */
  const call = (day: number) => {
    const shiftMj = (shifts[day - 1] ?? 0) / KCAL_PER_MJ;
    const { since, ...aim } = aimOn(scenario.stretches, day);
    const markBeforeG = targets.carbohydrateG;
    const expectedKcal = kcalOf(targets) * luck.average;
    const input: CallInput = {
      athlete: known,
      days,
      waist,
      keyLifts,
      calls,
      aim: since === undefined || world.terse ? aim : { ...aim, since },
      targets: {
        ...targets,
        fatFloorG: Math.min(targets.fatG, Math.round(0.7 * profile.massKg)),
        carbohydrateBand: { lowG: 1.5 * targets.proteinG, highG: 2 * targets.proteinG },
      },
    };
    const answer = controller(input, {
      markForPace: (pace) => {
        const kcal = energyForPace(plant, body, pace, shiftMj) / luck.average;
        return (kcal - 4 * targets.proteinG - 9 * targets.fatG) / 4;
      },
    });
    if (answer.verdict !== 'not-enough') targets.carbohydrateG = answer.carbohydrateG;
    const inForceG = targets.carbohydrateG;
    const decidedOn = days.at(-1)?.day ?? isoDay(day);
    calls.push({ day: decidedOn, decision: 'accepted', proposedG: inForceG, inForceG });
    run.calls.push({
      day: day - 1,
      answer,
      markBeforeG,
      markAfterG: inForceG,
      maintenanceKcal: maintenanceOf(plant, body, shiftMj) * luck.reported,
      expectedPace: paceAt(plant, body, expectedKcal, shiftMj),
      aim,
    });
  };

  for (let day = 0; day < total; day++) {
    const shiftMj = (shifts[day] ?? 0) / KCAL_PER_MJ;
    const weighs = () => readScale(errors, day, massOf(body));
    const callsToday = day > 0 && day % 7 === 0;
    if (callsToday && !world.callsInMorning) call(day);
    const morningKg = weighs();
    measure(day);
    if (callsToday && world.callsInMorning) {
      // The day of the call is told with its weigh-in, before anything was eaten.
      days.push({ day: isoDay(day), weightKg: morningKg, intake: null, prescribed: { ...targets } });
      call(day);
      days.pop();
    }
    const prescribed = { ...targets };
    const eaten = eat(prescribed, luck, day);
    const dosePace = paceAt(plant, body, kcalOf(prescribed) * luck.average, shiftMj);
    liveOneDay(plant, body, {
      energyMj: kcalOf(eaten) / KCAL_PER_MJ,
      carbohydrateMj: (4 * eaten.carbohydrateG) / KCAL_PER_MJ,
      sodiumMg: errors.sodiumMg[day] ?? 0,
      shiftMj,
    });
    days.push({
      day: isoDay(day),
      weightKg: world.weighsAfterEating ? weighs() : morningKg,
      intake: writeLog(eaten, luck, day),
      prescribed,
    });
    run.days.push({
      tissueKg: tissueOf(body),
      fatKg: body.fatKg,
      massKg: massOf(body),
      dosePace,
      aim: aimOn(scenario.stretches, day),
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
