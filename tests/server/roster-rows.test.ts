import { readRecord } from '@platewright/core/changes/read.ts';
import { expect, it, vi } from 'vitest';
import { createRosterRows } from '../../daemon/src/server/roster-rows.ts';
import { createSeasons } from '../../daemon/src/server/seasons.ts';
import { ATHLETE, athleteFields, change, phaseFields } from './fields.ts';
import { useHouse } from './house.ts';

const house = useHouse();

it('a row costs a weekly call only when its athlete wrote since, or the date is another', async () => {
  const { store } = house();
  const put = (...changes: ReturnType<typeof change>[]) => store.append(changes, (clock) => clock);
  await put(change('c1', 'athlete', ATHLETE, athleteFields), change('c2', 'phase', 'p', phaseFields));
  const seasons = createSeasons(store);
  const read = vi.spyOn(seasons, 'of');
  const rowOf = createRosterRows({ store, seasons });
  const look = async (date: string) => {
    const [record] = await store.records({ kind: 'athlete', athlete: ATHLETE });
    const athlete = record === undefined ? null : readRecord('athlete', record);
    return athlete === null ? null : await rowOf(athlete, date);
  };
  const first = await look('2026-03-02');
  expect(first).toMatchObject({ name: 'Ann', callDueOn: '2026-03-02' });
  await put({ ...change('c3', 'athlete', 'bob', athleteFields), athlete: 'bob' });
  expect(await look('2026-03-02')).toEqual(first);
  await store.fold(2);
  expect(await look('2026-03-02')).toEqual(first);
  expect(read).toHaveBeenCalledTimes(1);

  const later = Date.parse('2026-03-02T12:00:00Z');
  await put(change('c4', 'athlete', ATHLETE, { name: 'Anna' }, later));
  expect(await look('2026-03-02')).toEqual({ ...first, name: 'Anna' });
  expect(read).toHaveBeenCalledTimes(2);
  expect(await look('2026-03-03')).toMatchObject({ name: 'Anna', callDueOn: '2026-03-03' });
  expect(read).toHaveBeenCalledTimes(3);
});

it('the first rows are read once somebody who sees several athletes says hello, before they are asked for', async () => {
  const { store, deps } = house();
  const put = (...changes: ReturnType<typeof change>[]) => store.append(changes, (clock) => clock);
  await put(change('c1', 'athlete', ATHLETE, athleteFields));
  const read = vi.spyOn(deps.seasons, 'of');
  const headers = await house().dashboard();
  const hello = async () => expect((await house().call('/v1/session', { headers })).status).toBe(200);
  await hello();
  expect(read).not.toHaveBeenCalled();
  await put({ ...change('c2', 'athlete', 'bob', athleteFields), athlete: 'bob' });
  await hello();
  await vi.waitFor(() => expect(read).toHaveBeenCalledTimes(2));
  await hello();
  const answer = await (await house().call('/v1/views/roster', { headers })).json();
  expect(answer.rows.map((row: { athlete: string }) => row.athlete)).toEqual([ATHLETE, 'bob']);
  expect(read).toHaveBeenCalledTimes(2);
});
