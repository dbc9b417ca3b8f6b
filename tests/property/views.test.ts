import type { Json } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { isKind, type Kind, kinds } from '@platewright/core/records/kinds.ts';
import { bodyView } from '@platewright/core/views/body.ts';
import { dayView } from '@platewright/core/views/day.ts';
import { gatherSeason } from '@platewright/core/views/gather.ts';
import { habitsView } from '@platewright/core/views/habits.ts';
import { larderView } from '@platewright/core/views/larder.ts';
import { liftsView } from '@platewright/core/views/lifts.ts';
import { planView } from '@platewright/core/views/plan.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import { weekView } from '@platewright/core/views/week.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { athleteOf, entryOf, livedSeason, seasonOf } from '../support/season.ts';
import { valuesOf } from '../support/values-of.ts';

const last = '2026-02-22';
const season: SeasonRecords = {
  ...livedSeason(last, 45),
  athlete: athleteOf({ sex: 'female' }),
  calipers: ['2026-02-20', '2026-01-23'].map((date) => ({
    id: `folds-${date}`,
    athlete: 'athlete-1',
    date,
    method: 'durnin-womersley',
    folds: { biceps: 5, triceps: 12, subscapular: 11, suprailiac: 10 },
  })),
  cycleStarts: ['2026-02-01', '2026-01-04'].map((date) => ({
    id: `cycle-${date}`,
    athlete: 'athlete-1',
    date,
  })),
  scaleShifts: [
    { id: 'shift-2026-01-20', athlete: 'athlete-1', date: '2026-01-20', cause: 'another scale' },
    { id: 'shift-2026-02-10', athlete: 'athlete-1', date: '2026-02-10', cause: 'creatine' },
  ],
  foods: [3, 1, 2].map((n) => ({
    id: `food-${n}`,
    athlete: 'athlete-1',
    name: n === 3 ? 'Oats' : `Food ${n}`,
    aliases: [],
    state: 'dry',
    per100: entryOf().per100,
    portions: [],
  })),
  standingMeals: [
    { id: 'meal-1', athlete: 'athlete-1', name: 'First', items: [{ food: 'food-3', grams: 80 }] },
    { id: 'meal-2', athlete: 'athlete-1', name: 'Second', items: [{ food: 'gone', grams: 80 }] },
  ],
};

function stored(kind: Kind, records: readonly { id: string; athlete: string }[]): StoredRecord[] {
  return records.map(({ id, athlete, ...rest }) => {
    const fields: Record<string, Json> = JSON.parse(JSON.stringify(rest));
    const clocks = Object.fromEntries(Object.keys(fields).map((field) => [field, formatClock(1, 0, 'a')]));
    return { id, athlete, kind, fields, clocks };
  });
}

const all: StoredRecord[] = [
  ...stored('athlete', [season.athlete]),
  ...stored('phase', season.phases),
  ...stored('food', season.foods ?? []),
  ...stored('entry', season.entries),
  ...stored('day', season.days),
  ...stored('weigh-in', season.weighIns),
  ...stored('tape', season.tape),
  ...stored('calipers', season.calipers),
  ...stored('cycle-start', season.cycleStarts),
  ...stored('scale-shift', season.scaleShifts),
  ...stored('lift', season.lifts),
  ...stored('lift-set', season.liftSets),
  ...stored('weekly-call', season.calls),
  ...stored('standing-meal', season.standingMeals),
];

function views(records: SeasonRecords): unknown {
  return {
    day: dayView(records, last, 800),
    week: weekView(records, last),
    body: bodyView(records, last),
    plan: planView(records, last),
    lifts: liftsView(records, last),
    larder: larderView(records),
    habits: habitsView(records, last),
  };
}

/** Where a number stands that JSON can't hold. */
function unfinite(value: unknown, at: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [at];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => unfinite(inner, `${at}/${name}`));
}

function shuffled<T>(items: readonly T[]): fc.Arbitrary<T[]> {
  return fc.shuffledSubarray([...items], { minLength: items.length, maxLength: items.length });
}

/** A record of any kind, with whatever the schema of its kind lets pass. */
const anyRecord = fc
  .constantFrom(...Object.keys(kinds).filter(isKind))
  .chain((kind) => {
    const schema = z.toJSONSchema(kinds[kind], { io: 'input' });
    return valuesOf(schema, schema).map((fields) => ({ kind, fields }));
  })
  .filter(({ kind, fields }) => kinds[kind].safeParse(fields).success);

describe('views', () => {
  it('can be shown whatever the records hold that their schemas let pass', () => {
    fc.assert(
      fc.property(fc.array(anyRecord, { minLength: 1, maxLength: 6 }), (records) => {
        const odd = records.flatMap(({ kind, fields }, i) => {
          const id = kind === 'athlete' ? season.athlete.id : `odd-${i}`;
          return stored(kind, [{ ...Object(fields), id, athlete: season.athlete.id }]);
        });
        const kept = all.filter(({ id }) => !odd.some((record) => record.id === id));
        const shown = gatherSeason([...kept, ...odd], season.athlete.id);
        // An athlete who was removed has no views.
        if (shown !== null) expect(unfinite(views(shown), '')).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('are the same, to the last bit, whichever order the records came in', () => {
    // Compared as one text, and only whether it is the same: a difference would fill the screen.
    const text = (records: SeasonRecords | null) => (records === null ? '' : JSON.stringify(views(records)));
    const gathered = text(gatherSeason(all, 'athlete-1'));
    fc.assert(
      fc.property(shuffled(all), (records) => {
        expect(text(gatherSeason(records, 'athlete-1')) === gathered).toBe(true);
      }),
      { numRuns: 15 },
    );
    const given = text(season);
    fc.assert(
      fc.property(shuffled(season.entries), shuffled(season.weighIns), shuffled(season.calls), (e, w, c) => {
        expect(text({ ...season, entries: e, weighIns: w, calls: c }) === given).toBe(true);
      }),
      { numRuns: 15 },
    );
  });

  it('leave less for the day’s meals by what was eaten, and never less than nothing', () => {
    const grams = fc.double({ min: 0, max: 120, noNaN: true });
    const eaten = fc.array(
      fc.record({ meal: fc.integer({ min: 1, max: 8 }), proteinG: grams, carbohydrateG: grams, fatG: grams }),
      { maxLength: 12 },
    );
    const meals = fc.integer({ min: 3, max: 8 });
    fc.assert(
      fc.property(eaten, meals, fc.integer({ min: -100, max: 1700 }), (foods, count, now) => {
        const entries = foods.map(({ meal, ...per100 }, i) =>
          entryOf({ id: `e${i}`, meal, per100: { ...per100, energyKcal: 9 * per100.fatG }, at: i }),
        );
        const view = dayView(seasonOf({ athlete: athleteOf({ meals: count }), entries }), '2026-02-02', now);
        expect(view.nextMeal).toBeGreaterThanOrEqual(1);
        expect(view.nextMeal).toBeLessThanOrEqual(count);
        const asked = {
          proteinG: view.targets.protein.quotaG,
          carbohydrateG: view.targets.carbohydrate.markG,
          fatG: view.targets.fat.targetG,
        };
        for (const gram of ['proteinG', 'carbohydrateG', 'fatG'] as const) {
          for (const meal of view.meals) expect(meal.left[gram]).toBeGreaterThanOrEqual(0);
          const left = view.meals.reduce((sum, meal) => sum + meal.left[gram], 0);
          expect(left).toBeCloseTo(Math.max(0, asked[gram] - view.eaten[gram]), 6);
        }
      }),
      { numRuns: 500 },
    );
  });
});
