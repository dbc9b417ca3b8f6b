import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { editsResponseSchema, recordsResponseSchema } from '@platewright/core/protocol/records.ts';
import { beforeEach, describe, expect, it } from 'vitest';
import { logOf } from '../support/log.ts';
import { ATHLETE, athleteFields, change, entryFields, phaseFields } from './fields.ts';
import { problemOf, useHouse } from './house.ts';

const house = useHouse();
let headers: Record<string, string>;
beforeEach(async () => {
  headers = await house().dashboard();
});

function post(...edits: object[]): Promise<Response> {
  return house().call('/v1/records', { headers, body: { edits } });
}

async function stored(...edits: object[]) {
  const answer = await post(...edits);
  expect(answer.status).toBe(200);
  return editsResponseSchema.parse(await answer.json());
}

async function read(query = '') {
  const answer = await house().call(`/v1/records${query}`, { headers });
  expect(answer.status).toBe(200);
  return recordsResponseSchema.parse(await answer.json()).records;
}

describe('edits', () => {
  it('set up an athlete with a larder and a phase in one step', async () => {
    const { records, seq } = await stored(
      { kind: 'athlete', athlete: ATHLETE, fields: athleteFields },
      { kind: 'phase', athlete: ATHLETE, fields: phaseFields },
    );
    expect(records[0]).toEqual({ athlete: ATHLETE, id: ATHLETE });
    expect(records[1]?.id).toMatch(/^[0-9a-f-]{36}$/);
    expect(seq).toBe(2 + starterFoods.length);
    expect(await read('?kind=athlete')).toEqual([
      { athlete: ATHLETE, id: ATHLETE, kind: 'athlete', fields: athleteFields },
    ]);
  });

  it.each(['', 'x'.repeat(61)])('set no field that a device can not read, such as “%s”', async (field) => {
    const answer = await post({ kind: 'athlete', fields: { ...athleteFields, [field]: 1 } });
    expect(answer.status).toBe(422);
    expect(await logOf(house().store)).toEqual([]);
  });

  it('make an athlete without being told an id', async () => {
    const { records } = await stored({ kind: 'athlete', fields: athleteFields });
    expect(records[0]?.id).toBe(records[0]?.athlete);
  });

  it('are stored all or not at all, and say which one is wrong and where', async () => {
    const answer = await post(
      { kind: 'entry', athlete: ATHLETE, fields: entryFields('2026-03-02') },
      { kind: 'entry', athlete: ATHLETE, fields: { ...entryFields('2026-03-02'), grams: 0 } },
      { kind: 'weigh-in', athlete: ATHLETE, fields: { date: '2026-03-02' } },
      { kind: 'teleport', athlete: ATHLETE, fields: {} },
      { kind: 'day', fields: { date: '2026-03-02' } },
    );
    expect(answer.status).toBe(422);
    const { errors } = Object({ errors: [], ...(await problemOf(answer)) });
    expect(errors.map((error: { pointer: string }) => error.pointer)).toEqual([
      '/edits/1',
      '/edits/2/fields/kg',
      '/edits/2/fields/at',
      '/edits/3',
      '/edits/4/athlete',
    ]);
    expect(await house().store.lastSeq()).toBe(0);
  });

  it('change single fields, clear one, take a record away and bring it back', async () => {
    const id = 'weigh-1';
    const weighIn = { kind: 'weigh-in', athlete: ATHLETE, id };
    await stored({ ...weighIn, fields: { date: '2026-03-02', kg: 70, at: 1, note: 'after lunch' } });
    await stored({ ...weighIn, fields: { kg: 71, note: null } });
    expect((await read())[0]?.fields).toEqual({ date: '2026-03-02', kg: 71, at: 1, note: null });
    expect((await post({ ...weighIn, fields: { kg: null } })).status).toBe(422);
    expect((await post({ ...weighIn, kind: 'day', fields: { date: '2026-03-02' } })).status).toBe(422);
    await stored({ ...weighIn, fields: { removed: true } });
    expect(await read()).toEqual([]);
    await stored({ ...weighIn, fields: { removed: false } });
    expect(await read()).toHaveLength(1);
  });

  it('see each other within one request', async () => {
    const day = { kind: 'day', athlete: ATHLETE, id: 'day-2026-03-02' };
    await stored({ ...day, fields: { date: '2026-03-02' } }, { ...day, fields: { complete: true } });
    expect((await read())[0]?.fields).toEqual({ date: '2026-03-02', complete: true });
  });

  it('win over all that was seen, even from a clock that is a little ahead', async () => {
    const ahead = change('c', 'weigh-in', 'w', { date: '2026-03-02', kg: 70, at: 1 }, house().now + 200_000);
    await house().store.append([ahead], (clock) => clock);
    await stored({ kind: 'weigh-in', athlete: ATHLETE, id: 'w', fields: { kg: 75 } });
    expect((await read())[0]?.fields.kg).toBe(75);
  });

  it('carry the device that made them', async () => {
    await stored({ kind: 'day', athlete: ATHLETE, id: 'd', fields: { date: '2026-03-02' } });
    const [{ id } = { id: '' }] = await house().store.devices();
    expect((await logOf(house().store))[0]?.device).toBe(id);
  });
});

it('are found by kind and date', async () => {
  await stored(
    ...['2026-03-01', '2026-03-02', '2026-03-03'].map((date) => ({
      kind: 'entry',
      athlete: ATHLETE,
      id: `e-${date}`,
      fields: entryFields(date),
    })),
  );
  const ids = (await read(`?athlete=${ATHLETE}&kind=entry&from=2026-03-02`)).map(({ id }) => id);
  expect(ids).toEqual(['e-2026-03-02', 'e-2026-03-03']);
  expect(await read('?athlete=bob')).toEqual([]);
});

it('a request that is wrong as a whole is told so in a sentence', async () => {
  let deep: unknown = 0;
  for (let level = 0; level < 40; level += 1) deep = [deep];
  for (const [body, what] of [
    [{ edits: deep }, 'nested too deeply'],
    [[], 'Invalid input'],
  ] as const) {
    const answer = await house().call('/v1/records', { headers, body });
    expect(answer.status).toBe(422);
    expect((await problemOf(answer)).detail).toMatch(new RegExp(`^The request: ${what}`));
  }
});
