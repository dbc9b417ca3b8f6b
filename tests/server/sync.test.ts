import { clockTime, formatClock, MAX_AHEAD_MS } from '@platewright/core/changes/clock.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { MAX_PUSH, pullResponseSchema, pushResponseSchema } from '@platewright/core/protocol/sync.ts';
import { beforeEach, describe, expect, it } from 'vitest';
import { ATHLETE, athleteFields, change, entryFields } from './fields.ts';
import { problemOf, useHouse } from './house.ts';

const house = useHouse();
let headers: Record<string, string>;
beforeEach(async () => {
  headers = await house().extension();
});

async function push(...changes: unknown[]): Promise<Outcome[]> {
  const answer = await house().call('/v1/push', { headers, body: { changes } });
  expect(answer.status).toBe(200);
  const { outcomes, store, now } = pushResponseSchema.parse(await answer.json());
  expect(store).toBe(house().store.id);
  expect(now).toBe(house().now);
  return outcomes;
}

async function pull(query = '') {
  const answer = await house().call(`/v1/pull${query}`, { headers });
  expect(answer.status).toBe(200);
  const page = pullResponseSchema.parse(await answer.json());
  if ('reset' in page) throw new Error('the log does not lead on from there');
  return page;
}

const entry = (id: string, at?: number) => change(id, 'entry', `entry-${id}`, entryFields('2026-03-02'), at);

describe('push and pull', () => {
  it('give back what was sent, in order and once, however often it was sent', async () => {
    const changes = [entry('a'), entry('b'), entry('c')];
    const first = await push(...changes);
    expect(first.map(({ outcome }) => outcome)).toEqual(['stored', 'stored', 'stored']);
    const again = await push(...changes.toReversed());
    expect(again.map(({ outcome }) => outcome)).toEqual(['known', 'known', 'known']);
    const all = await pull();
    expect(all.changes).toEqual(changes);
    expect(all).toMatchObject({ seq: 3, more: false });
    const page = await pull('?since=1&limit=1');
    expect(page).toMatchObject({ changes: [changes[1]], seq: 2, more: true });
    expect(await pull('?since=3')).toMatchObject({ changes: [], seq: 3, more: false });
  });

  it('accept the good of a batch and say why not the rest', async () => {
    const outcomes = await push(
      entry('a'),
      change('b', 'entry', 'e', { ...entryFields('2026-03-02'), grams: -1 }),
      change('c', 'teleport', 't', {}),
      entry('d'),
    );
    expect(outcomes.map(({ outcome }) => outcome)).toEqual(['stored', 'rejected', 'rejected', 'stored']);
    expect(outcomes[1]).toHaveProperty('reason', expect.stringMatching(/^entry\.grams: .*>0/));
    expect((await pull()).changes.map(({ id }) => id)).toEqual(['a', 'd']);
    expect(outcomes[3]).toMatchObject({ seq: 2 });
  });

  it('take a field as deep as a request may be, and none that is deeper', async () => {
    const nested = (levels: number) => JSON.parse(`${'['.repeat(levels)}${']'.repeat(levels)}`);
    // Above a field's value are the request, its changes, the change and its fields.
    for (const levels of [3, 8, 9, 29]) {
      const sent = change(`c${levels}`, 'day', `d${levels}`, { more: nested(levels) });
      expect(await push(sent)).toMatchObject([{ outcome: 'stored' }]);
      expect((await pull()).changes.at(-1)).toEqual(sent);
    }
    const deeper = { changes: [entry('a'), change('b', 'day', 'd', { more: nested(30) })] };
    const answer = await house().call('/v1/push', { headers, body: deeper });
    expect(await problemOf(answer)).toMatchObject({
      status: 422,
      detail: expect.stringMatching(/too deeply/),
    });
    expect((await pull()).seq).toBe(4);
  });

  it('take no more than a batch', async () => {
    const changes = Array.from({ length: MAX_PUSH + 1 }, (_, i) => entry(`c${i}`));
    const answer = await house().call('/v1/push', { headers, body: { changes } });
    expect(answer.status).toBe(422);
    await problemOf(answer);
  });

  it('store a clock that is far ahead as now, in the order in which they came, and say so', async () => {
    const year = 365 * 86_400_000;
    const slightly = house().now + MAX_AHEAD_MS;
    const sent = [entry('a', house().now + 2 * year), entry('b', house().now + year), entry('c', slightly)];
    const outcomes = await push(...sent);
    const clocks = outcomes.map((outcome) => ('clock' in outcome ? outcome.clock : ''));
    expect(clocks.slice(0, 2)).toEqual([
      formatClock(house().now, 0, 'phone'),
      formatClock(house().now, 1, 'phone'),
    ]);
    expect(clocks[2]).toBe(formatClock(slightly, 0, 'phone'));
    expect((await pull()).changes.map(({ clock }) => clock)).toEqual(clocks);
    const again = await push(sent[0]);
    expect(again).toEqual([{ id: 'a', outcome: 'known', seq: 1, clock: clocks[0] }]);
  });

  it('store a clock that is years behind as it is', async () => {
    const [outcome] = await push(entry('a', 1000));
    expect(outcome).toHaveProperty('clock', formatClock(1000, 0, 'phone'));
  });

  it('keep to one order when requests run side by side', async () => {
    const batches = Array.from({ length: 20 }, (_, i) => [entry(`a${i}`), entry(`b${i}`)]);
    await Promise.all(batches.map((batch) => push(...batch)));
    await Promise.all(batches.map((batch) => push(...batch)));
    expect(new Set((await pull()).changes.map(({ id }) => id)).size).toBe(40);
    expect(await house().store.verify()).toEqual([]);
  });
});

describe('a new athlete', () => {
  const athlete = (id: string) => change(id, 'athlete', ATHLETE, athleteFields);

  it('gets the starter larder, once, and older than every edit', async () => {
    expect(await push(athlete('a'))).toHaveLength(1);
    const foods = await house().store.records({ athlete: ATHLETE, kind: 'food' });
    expect(foods).toHaveLength(starterFoods.length);
    for (const food of foods)
      for (const clock of Object.values(food.clocks)) expect(clockTime(clock)).toBe(0);
    await push(athlete('b'));
    expect(await house().store.lastSeq()).toBe(2 + starterFoods.length);
    const [first] = starterFoods;
    await push(change('c', 'food', first?.id ?? '', { name: 'My own eggs' }, 5));
    expect((await house().store.record(ATHLETE, first?.id ?? ''))?.fields.name).toBe('My own eggs');
  });

  it('that is refused gets none', async () => {
    const [wrong] = await push(change('a', 'athlete', ATHLETE, { ...athleteFields, meals: 99 }));
    expect(wrong?.outcome).toBe('rejected');
    const [other] = await push(change('b', 'athlete', 'bob', athleteFields));
    expect(other?.outcome).toBe('rejected');
    expect(await house().store.lastSeq()).toBe(0);
  });
});

describe('pushes that wait together', () => {
  it('are each told of their own changes, also when one of them can not be stored', async () => {
    const { store } = house();
    const whole = store.append;
    store.append = (changes, stamp) =>
      changes.some(({ id }) => id === 'poison') ? Promise.reject(new Error('poison')) : whole(changes, stamp);
    const complain = console.error;
    console.error = () => undefined;
    try {
      const ids = ['a', 'b', 'poison', 'c'];
      const answers = await Promise.all(
        ids.map((id) =>
          house().call('/v1/push', { headers, body: { changes: [entry(id), entry(`${id}2`)] } }),
        ),
      );
      expect(answers.map(({ status }) => status)).toEqual([200, 200, 500, 200]);
      for (const [i, answer] of answers.entries()) {
        if (answer.status !== 200) continue;
        const { outcomes } = pushResponseSchema.parse(await answer.json());
        expect(outcomes.map(({ id }) => id)).toEqual([ids[i], `${ids[i]}2`]);
      }
      expect(await store.lastSeq()).toBe(6);
    } finally {
      console.error = complain;
    }
  });
});
