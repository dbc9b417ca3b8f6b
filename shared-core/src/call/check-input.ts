import type { DayGrams } from '../maintenance/day-table.ts';
import { isWithin, type Limits, limits } from '../records/limits.ts';
import { dayNumber } from '../units/day-number.ts';
import type { CallInput } from './input.ts';

/** More than thirty years of days are a mistake in a date. */
const MOST_DAYS = 11_000;

/** What the call believes of one date or one reading: beyond it lies a slip of the keys, to be left out. */
export const believable = {
  /** Of protein, carbohydrate, fat or alcohol. */
  eatenG: { least: 0, most: 3000 },
  sodiumMg: { least: 0, most: 100_000 },
  newestFatPercent: { least: 0, most: limits.fatPercent.most },
  waistCm: { least: 30, most: limits.tapeCm.most },
} as const;

/** Quotas, marks, bands and floors that targets can come to, g a day. */
const targetG = { least: 0, most: 10_000 };
/** Of body mass a week, %. */
const pace = { least: -5, most: 5 };
const exerciseKcal = { least: 0, most: 10_000 };

/** Throws a RangeError that says what is wrong and where; the call never guesses about numbers that are none. */
export function checkInput(input: CallInput): void {
  checkAthlete(input);
  checkAim(input);
  checkGrams(input.targets, 'targets', targetG);
  const { lowG, highG } = input.targets.carbohydrateBand;
  checkNumber(lowG, 'targets.carbohydrateBand.lowG', targetG);
  checkNumber(highG, 'targets.carbohydrateBand.highG', { ...targetG, least: lowG });
  checkNumber(input.targets.fatFloorG, 'targets.fatFloorG', targetG);
  checkOrder(input.days, 'days', true);
  checkOrder(input.waist, 'waist', false);
  checkOrder(input.keyLifts, 'keyLifts', false);
  checkOrder(input.calls, 'calls', false);
  for (const [index, day] of input.days.entries()) {
    const where = `days[${index}] (${day.day})`;
    if (day.weightKg !== null) checkNumber(day.weightKg, `${where}.weightKg`, limits.weighInKg);
    if (day.prescribed) checkGrams(day.prescribed, `${where}.prescribed`, targetG);
    if (!day.intake) continue;
    checkGrams(day.intake, `${where}.intake`, believable.eatenG);
    if (day.intake.alcoholG !== undefined)
      checkNumber(day.intake.alcoholG, `${where}.intake.alcoholG`, believable.eatenG);
    if (day.intake.sodiumMg !== undefined)
      checkNumber(day.intake.sodiumMg, `${where}.intake.sodiumMg`, believable.sodiumMg);
  }
  for (const [index, { cm }] of input.waist.entries())
    checkNumber(cm, `waist[${index}].cm`, believable.waistCm);
  for (const [index, set] of input.keyLifts.entries()) {
    checkNumber(set.loadKg, `keyLifts[${index}].loadKg`, limits.loadKg);
    checkNumber(set.repetitions, `keyLifts[${index}].repetitions`, limits.repetitions);
  }
  for (const [index, call] of input.calls.entries()) {
    checkNumber(call.proposedG, `calls[${index}].proposedG`, targetG);
    checkNumber(call.inForceG, `calls[${index}].inForceG`, targetG);
  }
  for (const [index, start] of (input.cycleStarts ?? []).entries()) checkDate(start, `cycleStarts[${index}]`);
  for (const [index, { day }] of (input.shifts ?? []).entries()) checkDate(day, `shifts[${index}].day`);
}

function checkAthlete({ athlete }: CallInput): void {
  checkNumber(athlete.ageYears, 'athlete.ageYears', limits.ageYears);
  checkNumber(athlete.heightCm, 'athlete.heightCm', limits.heightCm);
  if (athlete.fatPercent !== undefined)
    checkNumber(athlete.fatPercent, 'athlete.fatPercent', limits.fatPercent);
  if (athlete.fatAtKg !== undefined) checkNumber(athlete.fatAtKg, 'athlete.fatAtKg', limits.weighInKg);
  if (athlete.newestFatPercent !== undefined)
    checkNumber(athlete.newestFatPercent, 'athlete.newestFatPercent', believable.newestFatPercent);
  if (athlete.exerciseKcal !== undefined)
    checkNumber(athlete.exerciseKcal, 'athlete.exerciseKcal', exerciseKcal);
}

function checkAim({ aim }: CallInput): void {
  checkNumber(aim.pacePercentPerWeek, 'aim.pacePercentPerWeek', pace);
  checkNumber(aim.band.low, 'aim.band.low', pace);
  checkNumber(aim.band.high, 'aim.band.high', pace);
  if (aim.band.low >= aim.band.high) throw new RangeError('aim.band.low must lie under aim.band.high.');
  checkNumber(aim.pacePercentPerWeek, 'aim.pacePercentPerWeek', { least: aim.band.low, most: aim.band.high });
  if (aim.since !== undefined) checkDate(aim.since, 'aim.since');
}

function checkGrams(grams: DayGrams, where: string, within: Limits): void {
  checkNumber(grams.proteinG, `${where}.proteinG`, within);
  checkNumber(grams.carbohydrateG, `${where}.carbohydrateG`, within);
  checkNumber(grams.fatG, `${where}.fatG`, within);
}

function checkNumber(value: number, where: string, within: Limits): void {
  if (typeof value !== 'number' || !isWithin(value, within))
    throw new RangeError(`${where} is ${value}; it must be a number from ${within.least} to ${within.most}.`);
}

function checkDate(day: string, where: string): number {
  const number = dayNumber(day);
  if (Number.isNaN(number)) throw new RangeError(`${where} is "${day}", which is no date like 2025-01-31.`);
  return number;
}

function checkOrder(rows: readonly { day: string }[], where: string, onePerDate: boolean): void {
  const order = onePerDate ? 'oldest first, one for each date' : 'oldest first';
  let before = Number.NEGATIVE_INFINITY;
  let first = Number.NaN;
  for (const [index, { day }] of rows.entries()) {
    const number = checkDate(day, `${where}[${index}].day`);
    if (number < before || (onePerDate && number === before))
      throw new RangeError(`${where}[${index}] (${day}) is out of order: ${order}.`);
    if (index === 0) first = number;
    if (number - first > MOST_DAYS)
      throw new RangeError(`${where}[${index}] (${day}) lies too far from the first.`);
    before = number;
  }
}
