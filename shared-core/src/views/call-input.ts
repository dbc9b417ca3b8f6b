import { believable } from '../call/check-input.ts';
import type { CallInput, TargetsInForce } from '../call/input.ts';
import { bestOfDays } from '../lifts/rep-max.ts';
import type { DayIntake, ModelDay } from '../maintenance/day-table.ts';
import { sessionKcal } from '../maintenance/energy-availability.ts';
import { isWithin } from '../records/limits.ts';
import { addDays, datesUpTo } from '../season/dates.ts';
import { kindOfDay } from '../season/kind-of-day.ts';
import { aimOf } from '../season/phase-in-force.ts';
import { type Asked, askedOn } from '../targets/asked.ts';
import { personOn } from '../targets/person.ts';
import { type DayRow, dayRows } from './day-rows.ts';
import { measuredFat } from './fat-on.ts';
import { oldestFirst } from './order.ts';
import type { SeasonRecords } from './season-records.ts';

/** Older days say nothing about the call of today. */
const MOST_YEARS_BACK = 12;
/**
 * What the weekly call of `date` looks at: the records up to that date, and of the decisions those before it, because
 * the call of `date` is the one to be decided.
 */
export function callInput(records: SeasonRecords, date: string): CallInput {
  const before = { ...records, calls: records.calls.filter((call) => call.date < date) };
  const asked = askedOn(before, date);
  return {
    athlete: {
      ...personOn(records.athlete, date),
      exerciseKcal: exerciseKcal(records, date, asked),
      stated: records.athlete.cautions,
      ...newestFat(records, date),
    },
    aim: aimOf(asked.phase),
    targets: targetsOf(asked),
    days: dayRows(before, firstDate(records, date), date).map(callDay),
    waist: records.tape
      .filter((tape) => tape.site === 'waist' && tape.date <= date && isWithin(tape.cm, believable.waistCm))
      .toSorted(oldestFirst)
      .map((tape) => ({ day: tape.date, cm: tape.cm })),
    keyLifts: keyLifts(records, date),
    calls: before.calls.toSorted(oldestFirst).map((call) => ({
      day: call.date,
      decision: call.decision,
      proposedG: call.proposedG,
      inForceG: call.markG,
    })),
    ...cycleStarts(records, date),
    shifts: records.scaleShifts
      .filter((shift) => shift.date <= date)
      .map(({ date: day, cause }) => ({ day, cause })),
  };
}

/** What is asked, as the call reads it. */
export function targetsOf({ protein, mark, fat, band }: Asked): TargetsInForce {
  return {
    proteinG: protein.quotaG,
    carbohydrateG: mark.markG,
    fatG: fat.targetG,
    fatFloorG: fat.floorG,
    carbohydrateBand: band,
  };
}

function newestFat({ athlete, tape, calipers }: SeasonRecords, date: string): { newestFatPercent?: number } {
  const readings = { tape: tape.toSorted(oldestFirst), calipers: calipers.toSorted(oldestFirst) };
  const newestFatPercent = measuredFat(athlete, readings, date);
  // An equation may tell of a slip of the keys what no body has.
  return newestFatPercent !== null && isWithin(newestFatPercent, believable.newestFatPercent)
    ? { newestFatPercent }
    : {};
}

/** Only women are asked for them; records of another sex at set-up may lie about. */
function cycleStarts(records: SeasonRecords, date: string): Pick<CallInput, 'cycleStarts'> {
  if (records.athlete.sex !== 'female') return {};
  const starts = records.cycleStarts.map((start) => start.date).filter((start) => start <= date);
  return starts.length === 0 ? {} : { cycleStarts: starts.sort() };
}

/** The first date with a weigh-in or an entry; `date` itself when there is none. */
function firstDate({ weighIns, entries, eaten = [] }: SeasonRecords, date: string): string {
  const limit = addDays(date, -365 * MOST_YEARS_BACK);
  let first = date;
  for (const { date: day } of [...weighIns, ...entries, ...eaten])
    if (day < first && day >= limit) first = day;
  return first;
}

function callDay(row: DayRow): ModelDay {
  const { date, weightKg, eaten, asked } = row;
  return {
    day: date,
    weightKg,
    intake: eaten === null ? null : intakeOf(eaten, row),
    prescribed:
      asked.phase === null
        ? null
        : { proteinG: asked.protein.quotaG, carbohydrateG: asked.mark.markG, fatG: asked.fat.targetG },
  };
}

function intakeOf(
  { known, partly }: NonNullable<DayRow['eaten']>,
  { complete, everyMeal }: DayRow,
): DayIntake | null {
  const { proteinG, carbohydrateG, fatG, alcoholG, sodiumMg } = known;
  const eaten = [proteinG, carbohydrateG, fatG, alcoholG];
  if (!eaten.every((grams) => isWithin(grams, believable.eatenG))) return null;
  const sodiumKnown = !partly.includes('sodiumMg') && isWithin(sodiumMg, believable.sodiumMg);
  return {
    proteinG,
    carbohydrateG,
    fatG,
    alcoholG,
    ...(sodiumKnown ? { sodiumMg } : {}),
    complete,
    everyMeal,
  };
}

/** What the sessions of four weeks cost above rest on an average day, kcal. */
function exerciseKcal({ athlete }: SeasonRecords, date: string, asked: Asked): number {
  const dates = datesUpTo(date, 28);
  const sessions = dates.filter((day) => kindOfDay(athlete.training, day) === 'session').length;
  return (sessions / dates.length) * sessionKcal(asked.bodyMassKg);
}

/** The best set of each session: warm-ups and back-off sets say nothing of where a lift is heading. */
function keyLifts({ lifts, liftSets }: SeasonRecords, date: string): CallInput['keyLifts'] {
  const names = new Map(lifts.filter((lift) => lift.key).map((lift) => [lift.id, lift.name]));
  const sets = liftSets.filter((set) => set.date <= date).toSorted(oldestFirst);
  return [...bestOfDays(sets, (set) => `${set.lift} ${set.date}`).values()].flatMap(({ set }) => {
    const lift = names.get(set.lift);
    return lift === undefined
      ? []
      : [{ day: set.date, lift, loadKg: set.loadKg, repetitions: set.repetitions }];
  });
}
