import { formatClock } from '@platewright/core/changes/clock.ts';
import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { larderWith, readLine } from '@platewright/core/foods/typed-line/read-line.ts';
import type { Entry, Food } from '@platewright/core/records/kinds.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { dayView } from '@platewright/core/views/day.ts';
import { habitsView } from '@platewright/core/views/habits.ts';
import { larderView } from '@platewright/core/views/larder.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layTable } from '../../extension/popup/line/options.ts';
import { readHabits } from '../../extension/popup/state/read-habits.ts';
import type { Reader } from '../../extension/replica/reader.ts';
import { entryOf, seasonOf } from '../support/season.ts';

const DATE = '2026-03-20';
const NAMES = ['White rice', 'Brown rice', 'Chicken', 'Egg', 'Oats', 'Ground beef', 'Butter', 'Milk'];
const foods: Food[] = starterFoods
  .filter(({ name }) => NAMES.some((begin) => name.startsWith(begin)))
  .map((food) => ({ ...food, athlete: 'athlete-1' }));

/** The replica of a browser that holds a season, as far as habits are read from it. */
function replicaOf(season: SeasonRecords): Reader {
  const rows = [
    ...season.foods.map((food) => ({ kind: 'food', date: '', record: food })),
    ...season.entries.map((entry) => ({ kind: 'entry', date: entry.date, record: entry })),
  ];
  return {
    read: (work) =>
      work({
        ...{ meta: async () => undefined, record: async () => undefined, newest: async () => undefined },
        ...{ outbox: async () => [], outboxCount: async () => 0, recordCount: async () => rows.length },
        records: async (_athlete, kind, from, to) =>
          rows
            .filter((row) => row.kind === kind && row.date >= from && row.date <= to)
            .map(({ date, record: { id, athlete, ...fields } }) => {
              const plain = JSON.parse(JSON.stringify(fields));
              const clock = formatClock(1, 0, 'a');
              const clocks = Object.fromEntries(Object.keys(plain).map((field) => [field, clock]));
              return { id, athlete, kind, date, fields: plain, clocks };
            }),
      }),
  };
}

/** What each item of a line came to, in the popup and on the dashboard. */
async function bothRead(season: SeasonRecords, other: SeasonRecords, line: string, meal: number) {
  const habits = await readHabits(replicaOf(season), season.athlete, DATE, null);
  if (habits === null) throw new Error('no replica');
  const { athlete } = season;
  const table = layTable(habits, { athlete, day: dayView(season, DATE, 0) }, meal);
  const sent = JSON.parse(JSON.stringify([larderView(other), habitsView(other, DATE)]));
  const [larder, view]: [ReturnType<typeof larderView>, ReturnType<typeof habitsView>] = sent;
  const index = indexFoods(larder.foods.map(({ food }) => food));
  const items = [
    readLine(line, table.larder),
    readLine(line, larderWith(index, view.meals[meal - 1] ?? [])),
  ].map((read) =>
    read.map((item) => ({
      ...item,
      ...('food' in item && { food: item.food.id }),
      ...('choices' in item && { choices: item.choices.map(({ id }) => id) }),
    })),
  );
  return { popup: items[0], dashboard: items[1] };
}

// Few, so that amounts of the same weight vie with each other.
const eaten = foods
  .filter(({ name }) => /^(White rice|Chicken breast|Egg, whole|Oats)/.test(name))
  .map(({ id }) => id);
const entry: fc.Arbitrary<Entry> = fc
  .record({
    id: fc.uuid(),
    food: fc.constantFrom(...eaten),
    daysAgo: fc.integer({ min: -3, max: 70 }),
    meal: fc.integer({ min: 1, max: 7 }),
    grams: fc.constantFrom(50, 80, 150, 200),
    amount: fc.constantFrom(undefined, '2 large', '1 cup'),
  })
  .map(({ daysAgo, amount, ...rest }) =>
    entryOf({ ...rest, date: addDays(DATE, -daysAgo), ...(amount !== undefined && { amount }) }),
  );
const item = fc.constantFrom(
  ...[
    'rice',
    '200 rice',
    '80 rice',
    'chicken',
    '200 chicken breast',
    '2 eggs',
    'egg',
    'beef',
    '93/7',
    'milk',
  ],
  ...['oats', '1 cup oats', '5 butter', 'brown rice', '50 zzz', 'chikcen', '6 whites', '200 g'],
);
const line = fc.array(item, { minLength: 1, maxLength: 4 }).map((items) => items.join(', '));

function shuffled<T>(items: readonly T[]): fc.Arbitrary<T[]> {
  return fc.shuffledSubarray([...items], { minLength: items.length, maxLength: items.length });
}

describe('a typed line', () => {
  it('is read the same in the popup and on the dashboard, whatever was eaten and in whatever order it comes', async () => {
    const seasons = fc
      .uniqueArray(entry, { maxLength: 60, size: 'max', selector: ({ id }) => id })
      .chain((entries) => fc.tuple(shuffled(entries), shuffled(entries), shuffled(foods), shuffled(foods)));
    await fc.assert(
      fc.asyncProperty(seasons, line, fc.integer({ min: 1, max: 6 }), async ([a, b, c, d], text, meal) => {
        const season = seasonOf({ entries: a, foods: c });
        const other = seasonOf({ entries: b, foods: d });
        const { popup, dashboard } = await bothRead(season, other, text, meal);
        expect(dashboard).toEqual(popup);
      }),
      { numRuns: 200 },
    );
  });

  it('means what this athlete eats of late at that meal, in the usual amount, on both', async () => {
    const dry = foods.find(({ name }) => name === 'White rice, dry');
    const days = [2, 4, 6].map((ago) => addDays(DATE, -ago));
    const entries = days.map((date) => entryOf({ id: date, date, meal: 2, food: dry?.id ?? '', grams: 90 }));
    const season = seasonOf({ entries, foods });
    const { popup, dashboard } = await bothRead(season, season, 'rice', 2);
    expect(popup).toMatchObject([{ status: 'ok', food: dry?.id, grams: 90 }]);
    expect(dashboard).toEqual(popup);
  });
});
