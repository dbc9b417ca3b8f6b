import type { Change } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import type { FieldsOf } from '@platewright/core/records/kinds.ts';

export const ATHLETE = 'ann';

export const athleteFields: FieldsOf<'athlete'> = {
  name: 'Ann',
  sex: 'female',
  birthYear: 1995,
  heightCm: 170,
  startMassKg: 70,
  massUnit: 'kg',
  energyUnit: 'kcal',
  timeZone: 'Europe/Berlin',
  rolloverHour: 3,
  meals: 5,
  wake: '06:30',
  sleep: '22:30',
  trainingTime: '18:00',
  training: { kind: 'weekdays', days: [1, 3, 5] },
  proteinGPerKg: 2,
  fatGPerKg: 0.9,
  cautions: [],
};

export const phaseFields: FieldsOf<'phase'> = {
  from: '2026-01-01',
  aim: 'off-season',
  pacePercentPerWeek: 0.25,
  bandLow: 0.1,
  bandHigh: 0.4,
};

export function entryFields(date: string, grams = 200): FieldsOf<'entry'> {
  return {
    date,
    meal: 1,
    food: 'own-chicken',
    name: 'Chicken',
    grams,
    per100: { energyKcal: 110, proteinG: 23, carbohydrateG: 0, fatG: 1.5 },
    at: Date.parse(`${date}T10:00:00Z`),
  };
}

/** A change of a phone at an instant. */
export function change(
  id: string,
  kind: string,
  record: string,
  fields: object,
  at = Date.parse('2026-03-02T11:00:00Z'),
): Change {
  const clock = formatClock(at, 0, 'phone');
  return {
    id,
    athlete: ATHLETE,
    device: 'phone',
    clock,
    kind,
    record,
    fields: JSON.parse(JSON.stringify(fields)),
  };
}
