import type { Athlete, Entry, Phase, WeeklyCallRecord, WeighIn } from '@platewright/core/records/kinds.ts';
import { datesUpTo } from '@platewright/core/season/dates.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { kgFromPounds } from '@platewright/core/units/mass.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import { seededChance } from '../../fixtures/season/chance.ts';

const ID = 'athlete-1';

/** An athlete of 200 lb who eats by the practice's rules; `change` replaces fields. */
export function athleteOf(change: Partial<Athlete> = {}): Athlete {
  return {
    ...setUpDefaults,
    id: ID,
    athlete: ID,
    name: 'Test athlete',
    sex: 'male',
    birthYear: 1996,
    heightCm: 180,
    startMassKg: kgFromPounds(200),
    massUnit: 'kg',
    energyUnit: 'kcal',
    timeZone: 'UTC',
    ...change,
  };
}

export function phaseOf(change: Partial<Phase> = {}): Phase {
  return {
    id: 'phase-1',
    athlete: ID,
    from: '2026-01-01',
    aim: 'off-season',
    pacePercentPerWeek: 0.25,
    bandLow: 0.1,
    bandHigh: 0.4,
    ...change,
  };
}

export function entryOf(change: Partial<Entry> = {}): Entry {
  return {
    id: 'entry-1',
    athlete: ID,
    date: '2026-02-02',
    meal: 1,
    food: 'food-1',
    name: 'Oats',
    grams: 100,
    per100: { energyKcal: 389, proteinG: 16.89, carbohydrateG: 66.27, fatG: 6.9 },
    at: 1_770_000_000_000,
    ...change,
  };
}

export function weighInOf(date: string, kg: number): WeighIn {
  return { id: `weigh-${date}`, athlete: ID, date, kg, at: Date.parse(`${date}T06:00:00Z`) };
}

export function callOf(change: Partial<WeeklyCallRecord> = {}): WeeklyCallRecord {
  const date = change.date ?? '2026-01-15';
  return {
    id: `call-${date}`,
    athlete: ID,
    date,
    verdict: 'up',
    decision: 'accepted',
    proposedG: 550,
    markG: 550,
    bodyMassKg: 91,
    summary: 'Up.',
    at: Date.parse(`${date}T08:00:00Z`),
    ...change,
  };
}

export function seasonOf(change: Partial<SeasonRecords> = {}): SeasonRecords {
  return {
    athlete: athleteOf(),
    phases: [phaseOf()],
    foods: [],
    entries: [],
    days: [],
    weighIns: [],
    tape: [],
    calipers: [],
    cycleStarts: [],
    scaleShifts: [],
    lifts: [],
    liftSets: [],
    calls: [],
    standingMeals: [],
    ...change,
  };
}

/** A season of so many dates up to `last`, eaten and weighed with some noise, with a decision each week. */
export function livedSeason(last: string, dates: number, seed = 1): SeasonRecords {
  const random = seededChance(seed).uniform;
  const days = datesUpTo(last, dates);
  const first = days[0] ?? last;
  const kg = (i: number) => 90 + 0.03 * i + random() - 0.5;
  return seasonOf({
    phases: [phaseOf({ from: first })],
    weighIns: days.filter(() => random() < 0.9).map((date, i) => weighInOf(date, kg(i))),
    entries: days.flatMap((date) =>
      [1, 2, 3, 4, 5, 6].map((meal) =>
        entryOf({
          id: `entry-${date}-${meal}`,
          date,
          meal,
          grams: 150 + 30 * random(),
          at: Date.parse(date) + meal,
        }),
      ),
    ),
    days: [{ id: `day-${last}`, athlete: ID, date: last, complete: false }],
    tape: days
      .filter((_, i) => i % 7 === 0)
      .flatMap((date) => [
        { id: `waist-${date}`, athlete: ID, date, site: 'waist' as const, cm: 86 + random() },
        { id: `neck-${date}`, athlete: ID, date, site: 'neck' as const, cm: 40 + random() / 2 },
      ]),
    lifts: [{ id: 'lift-1', athlete: ID, name: 'Squat', key: true, smallestStepKg: 2.5 }],
    liftSets: days
      .filter((_, i) => i % 7 === 1)
      .map((date, i) => ({
        id: `set-${date}`,
        athlete: ID,
        date,
        lift: 'lift-1',
        loadKg: 140 + 2.5 * i,
        repetitions: 5,
      })),
    calls: days
      .filter((date, i) => i % 7 === 6 && date !== last)
      .map((date, i) => callOf({ date, markG: 520 + 5 * (i % 4), bodyMassKg: 90 + 0.2 * i })),
  });
}
