import type { DayGrams } from '../maintenance/day-table.ts';
import { dayNumber } from '../units/day-number.ts';
import type { CallInput } from './input.ts';

/** More than thirty years of days are a mistake in a date. */
const MOST_DAYS = 11_000;

/** Ages that the call reckons with, years. */
export const AGES = { least: 10, most: 120 } as const;

/** Throws a RangeError that says what is wrong and where; the call never guesses about numbers that are none. */
export function checkInput(input: CallInput): void {
  checkAthlete(input);
  checkAim(input);
  checkGrams(input.targets, 'targets');
  const { lowG, highG } = input.targets.carbohydrateBand;
  checkNumber(lowG, 'targets.carbohydrateBand.lowG', 0, 10_000);
  checkNumber(highG, 'targets.carbohydrateBand.highG', lowG, 10_000);
  checkNumber(input.targets.fatFloorG, 'targets.fatFloorG', 0, 1000);
  checkOrder(input.days, 'days', true);
  checkOrder(input.waist, 'waist', false);
  checkOrder(input.keyLifts, 'keyLifts', false);
  checkOrder(input.calls, 'calls', false);
  for (const [index, day] of input.days.entries()) {
    const where = `days[${index}] (${day.day})`;
    if (day.weightKg !== null) checkNumber(day.weightKg, `${where}.weightKg`, 20, 400);
    if (day.prescribed) checkGrams(day.prescribed, `${where}.prescribed`);
    if (!day.intake) continue;
    checkGrams(day.intake, `${where}.intake`);
    if (day.intake.alcoholG !== undefined)
      checkNumber(day.intake.alcoholG, `${where}.intake.alcoholG`, 0, 1000);
    if (day.intake.sodiumMg !== undefined)
      checkNumber(day.intake.sodiumMg, `${where}.intake.sodiumMg`, 0, 100_000);
  }
  for (const [index, { cm }] of input.waist.entries()) checkNumber(cm, `waist[${index}].cm`, 30, 250);
  for (const [index, set] of input.keyLifts.entries()) {
    checkNumber(set.loadKg, `keyLifts[${index}].loadKg`, 0, 1000);
    checkNumber(set.repetitions, `keyLifts[${index}].repetitions`, 0, 200);
  }
  for (const [index, call] of input.calls.entries()) {
    checkNumber(call.proposedG, `calls[${index}].proposedG`, 0, 3000);
    checkNumber(call.inForceG, `calls[${index}].inForceG`, 0, 3000);
  }
  for (const [index, start] of (input.cycleStarts ?? []).entries()) checkDate(start, `cycleStarts[${index}]`);
  for (const [index, { day }] of (input.shifts ?? []).entries()) checkDate(day, `shifts[${index}].day`);
}

function checkAthlete({ athlete }: CallInput): void {
  checkNumber(athlete.ageYears, 'athlete.ageYears', AGES.least, AGES.most);
  checkNumber(athlete.heightCm, 'athlete.heightCm', 90, 250);
  if (athlete.fatPercent !== undefined) checkNumber(athlete.fatPercent, 'athlete.fatPercent', 2, 70);
  if (athlete.fatAtKg !== undefined) checkNumber(athlete.fatAtKg, 'athlete.fatAtKg', 20, 400);
  if (athlete.newestFatPercent !== undefined)
    checkNumber(athlete.newestFatPercent, 'athlete.newestFatPercent', 0, 70);
  if (athlete.exerciseKcal !== undefined)
    checkNumber(athlete.exerciseKcal, 'athlete.exerciseKcal', 0, 10_000);
}

function checkAim({ aim }: CallInput): void {
  checkNumber(aim.pacePercentPerWeek, 'aim.pacePercentPerWeek', -5, 5);
  checkNumber(aim.band.low, 'aim.band.low', -5, 5);
  checkNumber(aim.band.high, 'aim.band.high', -5, 5);
  if (aim.band.low >= aim.band.high) throw new RangeError('aim.band.low must lie under aim.band.high.');
  checkNumber(aim.pacePercentPerWeek, 'aim.pacePercentPerWeek', aim.band.low, aim.band.high);
  if (aim.since !== undefined) checkDate(aim.since, 'aim.since');
}

function checkGrams(grams: DayGrams, where: string): void {
  checkNumber(grams.proteinG, `${where}.proteinG`, 0, 3000);
  checkNumber(grams.carbohydrateG, `${where}.carbohydrateG`, 0, 3000);
  checkNumber(grams.fatG, `${where}.fatG`, 0, 3000);
}

function checkNumber(value: number, where: string, low: number, high: number): void {
  if (typeof value !== 'number' || !(value >= low && value <= high))
    throw new RangeError(`${where} is ${value}; it must be a number from ${low} to ${high}.`);
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
