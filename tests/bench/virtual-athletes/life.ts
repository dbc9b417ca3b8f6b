import type { VirtualAthlete } from './population.ts';
import { seededRandom } from './random.ts';
import type { EatingNoise, World } from './variants.ts';

/** Unforeseen change of expenditure for each day, kcal/d: a slow walk and steps that last. */
export function shiftsOfLife(athlete: VirtualAthlete, days: number, world: World): Float64Array {
  const random = seededRandom(athlete.seed, athlete.number, 23);
  const shifts = new Float64Array(days);
  const stepChance = world.steps.per26Weeks / 182;
  let shift = 0;
  for (let day = 0; day < days; day++) {
    shift += (world.driftKcal / Math.sqrt(7)) * random.normal();
    const size = world.steps.sdKcal * random.normal();
    if (random.chance(stepChance)) shift += size;
    shifts[day] = shift;
  }
  return shifts;
}

/** How the log is kept: shares of days without weight or log, share of the food that never reaches the log. */
export interface Diligence {
  missingWeights: number;
  missingLogs: number;
  /** Share of the logged days that are logged by half and said to be so. */
  halfLogs: number;
  underReport: number;
  /** Eats until the log reads what was prescribed, so that an under-report is eaten on top. */
  eatsByLog: boolean;
}

export const tidy: Diligence = {
  missingWeights: 0,
  missingLogs: 0,
  halfLogs: 0,
  underReport: 0,
  eatsByLog: true,
};

/** What a day's eating is multiplied with, drawn ahead so that every controller meets the same luck. */
export interface EatingLuck {
  /** Eaten energy over prescribed, without the constant part. */
  eaten: Float64Array;
  /** Logged over eaten. */
  logged: Float64Array;
  /** Share of the deviation that falls on carbohydrate, the rest on fat. */
  onCarbohydrate: Float64Array;
  missing: Uint8Array;
  half: Uint8Array;
  /** The constant part: mean eaten over prescribed. */
  average: number;
  /** The constant part of logged over eaten. */
  reported: number;
}

/** Draws the luck of eating and logging of one athlete. */
export function eatingLuck(
  athlete: VirtualAthlete,
  days: number,
  noise: EatingNoise,
  diligence: Diligence,
): EatingLuck {
  const random = seededRandom(athlete.seed, athlete.number, 37);
  const habit = noise.person * random.normal();
  const reported = (1 - diligence.underReport) * (1 + noise.logPerson * random.normal());
  const luck: EatingLuck = {
    eaten: new Float64Array(days),
    logged: new Float64Array(days),
    onCarbohydrate: new Float64Array(days),
    missing: new Uint8Array(days),
    half: new Uint8Array(days),
    average: diligence.eatsByLog ? (1 + habit) / reported : 1 + habit,
    reported,
  };
  let week = 0;
  for (let day = 0; day < days; day++) {
    if (day % 7 === 0) week = noise.week * random.normal();
    luck.eaten[day] = luck.average * Math.max(0.4, 1 + week + noise.day * random.normal());
    luck.logged[day] = reported * Math.max(0.3, 1 + noise.logDay * random.normal());
    luck.onCarbohydrate[day] = 0.4 + 0.4 * random.even();
    luck.missing[day] = random.chance(diligence.missingLogs) ? 1 : 0;
    luck.half[day] = random.chance(diligence.halfLogs) ? 1 : 0;
  }
  return luck;
}
