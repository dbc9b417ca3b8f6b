import type { Athlete, Entry, Phase, WeeklyCallRecord, WeighIn } from '@platewright/core/records/kinds.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { kgFromPounds } from '@platewright/core/units/mass.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';

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
    lifts: [],
    liftSets: [],
    calls: [],
    standingMeals: [],
    ...change,
  };
}
