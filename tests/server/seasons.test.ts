import { eatenDay } from '@platewright/core/views/eaten-day.ts';
import { gatherSeason } from '@platewright/core/views/gather.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { createSeasons } from '../../daemon/src/server/seasons.ts';
import { ATHLETE, athleteFields, change, entryFields, phaseFields } from './fields.ts';
import { useHouse } from './house.ts';

const house = useHouse();

/** A season as it is held: its entries added up by date. */
function addedUp(season: SeasonRecords | null): SeasonRecords | null {
  if (season === null) return null;
  const days = [...Map.groupBy(season.entries, ({ date }) => date)].map(([date, some]) =>
    eatenDay(date, some),
  );
  return { ...season, entries: [], eaten: [...(season.eaten ?? []), ...days].sort(byDate) };
}

function byDate(a: { date: string }, b: { date: string }): number {
  return a.date < b.date ? -1 : 1;
}

it('follows every change, so that it is what reading all records again would give', async () => {
  const { store } = house();
  const seasons = createSeasons(store);
  const record = fc.oneof(
    fc.record({
      kind: fc.constant('entry'),
      id: fc.integer({ min: 1, max: 6 }),
      fields: fc.constantFrom(
        entryFields('2026-03-01'),
        entryFields('2026-03-02', 50),
        { grams: 77 },
        { date: '2026-03-03' },
        { removed: true },
        { removed: false },
      ),
    }),
    fc.record({
      kind: fc.constant('phase'),
      id: fc.integer({ min: 7, max: 8 }),
      fields: fc.constantFrom(phaseFields, { removed: true }, { removed: false }),
    }),
    fc.record({
      kind: fc.constant('athlete'),
      id: fc.constant(0),
      fields: fc.constantFrom(athleteFields, { removed: true }, { removed: false }, { name: 'Anna' }),
    }),
  );
  let clock = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(fc.array(record, { maxLength: 5 }), { maxLength: 8 }), async (rounds) => {
      for (const round of rounds) {
        const changes = round.map(({ kind, id, fields }) => {
          clock += 1;
          return change(`c${clock}`, kind, id === 0 ? ATHLETE : `r${id}`, fields, clock);
        });
        await store.append(changes, (stamp) => stamp);
        const fresh = gatherSeason(await store.records({ athlete: ATHLETE }), ATHLETE);
        expect(addedUp(await seasons.of(ATHLETE))).toEqual(addedUp(fresh));
      }
    }),
    { numRuns: 60 },
  );
});

it('adds a date up to the same last bit, however many pages its entries are read in', async () => {
  const { store } = house();
  const entries = Array.from({ length: 700 }, (_, i) =>
    change(`c${i}`, 'entry', `r${(i * 37) % 700}`, {
      ...entryFields('2026-03-02', i / 7),
      meal: 1 + (i % 3),
    }),
  );
  await store.append([change('x', 'athlete', ATHLETE, athleteFields), ...entries], (stamp) => stamp);
  const fresh = gatherSeason(await store.records({ athlete: ATHLETE }), ATHLETE);
  expect(await createSeasons(store).of(ATHLETE)).toEqual(addedUp(fresh));
});

it('lets the athletes not asked for go', async () => {
  const { store } = house();
  const seasons = createSeasons(store);
  const ids = Array.from({ length: 9 }, (_, i) => `athlete-${i}`);
  await store.append(
    ids.map((id) => ({ ...change(id, 'athlete', id, { ...athleteFields, name: id }), athlete: id })),
    (stamp) => stamp,
  );
  for (const id of [...ids, ...ids]) expect((await seasons.of(id))?.athlete.name).toBe(id);
  expect(await seasons.of('nobody')).toBeNull();
});
