import { gatherSeason } from '@platewright/core/views/gather.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { createSeasons } from '../../daemon/src/server/seasons.ts';
import { ATHLETE, athleteFields, change, entryFields, phaseFields } from './fields.ts';
import { useHouse } from './house.ts';

const house = useHouse();

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
        expect(await seasons.of(ATHLETE)).toEqual(fresh);
      }
    }),
    { numRuns: 60 },
  );
});

it('holds equal nutrients once', async () => {
  const { store } = house();
  const entries = ['a', 'b'].map((id) => change(id, 'entry', id, entryFields('2026-03-02')));
  await store.append([change('x', 'athlete', ATHLETE, athleteFields), ...entries], (stamp) => stamp);
  const season = await createSeasons(store).of(ATHLETE);
  expect(season?.entries).toHaveLength(2);
  expect(season?.entries[0]?.per100).toBe(season?.entries[1]?.per100);
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
