import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { createAthletes } from '../../daemon/src/server/athletes.ts';
import { athleteFields, change, entryFields } from './fields.ts';
import { useHouse } from './house.ts';

const house = useHouse();
const keep = (clock: string) => clock;
let ids = 0;

/** Appends a change of a record, later than all before. */
async function write(athlete: string, kind: string, fields: Record<string, unknown>): Promise<void> {
  ids += 1;
  const record = kind === 'athlete' ? athlete : `r${ids}`;
  await house().store.append([{ ...change(`c${ids}`, kind, record, fields), athlete }], keep);
}

it('are what reading them all again would give, whatever was written since', async () => {
  const { store } = house();
  const athletes = createAthletes(store);
  const deed = fc.oneof(
    fc.record({
      athlete: fc.constantFrom('cat', 'ann', 'bob'),
      kind: fc.constant('athlete'),
      fields: fc.constantFrom(athleteFields, { name: 'Other' }, { removed: true }, { removed: false }),
    }),
    fc.constant({ athlete: 'ann', kind: 'entry', fields: entryFields('2026-03-01') }),
    fc.constant('fold'),
    fc.constant('look'),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(deed, { maxLength: 12 }), async (deeds) => {
      for (const one of deeds) {
        if (one === 'fold') await store.fold((await store.lastSeq()) + 1);
        else if (one === 'look') await athletes.of(undefined);
        else await write(one.athlete, one.kind, one.fields);
      }
      expect(await athletes.of(undefined)).toEqual(await store.records({ kind: 'athlete' }));
    }),
    { numRuns: 60 },
  );
  expect((await athletes.of('ann')).map(({ id }) => id)).toEqual(['ann']);
  expect(await athletes.of('nobody')).toEqual([]);
});

it('are read once by session, roster and the view of the first athlete, and followed from then on', async () => {
  for (let i = 10; i < 40; i++) await write(`a${i}`, 'athlete', { ...athleteFields, name: `Athlete ${i}` });
  const read = vi.spyOn(house().store, 'records');
  const headers = await house().extension();
  const session = async () => await (await house().call('/v1/session', { headers })).json();
  expect((await session()).athletes).toHaveLength(30);
  await house().call('/v1/views/roster', { headers });
  await house().call('/v1/views/day', { headers });
  await write('a20', 'athlete', { removed: true });
  await write('b1', 'athlete', { ...athleteFields, name: 'New' });
  const { athletes } = await session();
  expect(athletes).toHaveLength(30);
  expect(athletes.at(-1)).toEqual({ id: 'b1', name: 'New' });
  const ofAll = read.mock.calls.filter(([{ kind, athlete }]) => kind === 'athlete' && athlete === undefined);
  expect(ofAll).toHaveLength(1);
});
