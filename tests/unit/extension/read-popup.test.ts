import 'fake-indexeddb/auto';
import type { Json } from '@platewright/core/changes/change.ts';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { readHabits } from '../../../extension/popup/state/read-habits.ts';
import { type DayState, readPopup } from '../../../extension/popup/state/read-popup.ts';
import { Database } from '../../../extension/replica/database.ts';
import { dexieReplica } from '../../../extension/replica/dexie-replica.ts';
import { type Edit, edit } from '../../../extension/replica/edit.ts';
import { indexedDbReader } from '../../../extension/replica/reader.ts';
import type { Head } from '../../../extension/replica/rows.ts';

const NOW = Date.UTC(2026, 2, 4, 12);
const athlete: Record<string, Json> = {
  name: 'Anna',
  sex: 'female',
  birthYear: 1992,
  heightCm: 170,
  startMassKg: 72,
  massUnit: 'kg',
  energyUnit: 'kcal',
  timeZone: 'UTC',
  rolloverHour: 3,
  meals: 5,
  wake: '06:30',
  sleep: '22:30',
  trainingTime: '17:30',
  training: { kind: 'weekdays', days: [1, 3, 5] },
  proteinGPerKg: 2,
  fatGPerKg: 0.9,
  cautions: [],
};
const per100 = { energyKcal: 100, proteinG: 10, carbohydrateG: 10, fatG: 2 };

let name = '';
let count = 0;
let database: Database;

function anna(kind: string, record: string, fields: Record<string, Json>): Edit {
  return { athlete: 'anna', kind, record, fields };
}

async function keep(...edits: Edit[]): Promise<void> {
  const source = {
    now: () => NOW,
    newId: () => {
      count += 1;
      return `id-${count}`;
    },
  };
  await edit(dexieReplica(database), source, edits);
}

async function pair(athletes = [{ id: 'anna', name: 'Anna' }]): Promise<void> {
  await become({ device: 'd0' });
  const session = { address: 'http://127.0.0.1:8787', demo: true, athletes };
  await database.meta.put({ name: 'session', value: session });
}

async function become(change: Partial<Head>): Promise<void> {
  await dexieReplica(database).transact(async (tx) => tx.putHead({ ...(await tx.head()), ...change }));
}

async function dayAt(now: number): Promise<DayState> {
  const state = await readPopup(indexedDbReader(name), null, now);
  if (state.kind !== 'day') throw new Error(state.kind);
  return state;
}

function oats(at: number, meal = 2): Record<string, Json> {
  return { date: '2026-03-04', meal, food: 'f', name: 'Oats', grams: 80, per100, at };
}

beforeEach(() => {
  count += 1;
  name = `popup-${count}`;
  database = new Database(name);
});

describe('what the popup shows', () => {
  it('asks to pair when there is no replica, and leaves making it to the worker', async () => {
    expect(await readPopup(indexedDbReader(name), null, NOW)).toEqual({ kind: 'unpaired', choice: null });
    const known = await indexedDB.databases();
    expect(known.map((one) => one.name)).not.toContain(name);
  });

  it('asks to set up when the store holds no athlete', async () => {
    await pair([]);
    const noAthlete = { kind: 'no-athlete', address: 'http://127.0.0.1:8787' };
    expect(await readPopup(indexedDbReader(name), null, NOW)).toMatchObject(noAthlete);
  });

  it('says that records are fetched, and that they were lost, until they are here', async () => {
    const shown = () => readPopup(indexedDbReader(name), null, NOW);
    await become({ device: 'd0' });
    expect(await shown()).toMatchObject({ kind: 'fetching', lost: true, waiting: 0 });
    await pair();
    expect(await shown()).toMatchObject({ kind: 'fetching', lost: false });
    await become({ seq: 3 });
    expect(await shown()).toMatchObject({ kind: 'no-athlete' });
  });

  it('goes by UTC where this browser does not know the athlete’s time zone, as the daemon does', async () => {
    await pair();
    await keep(anna('athlete', 'anna', { ...athlete, timeZone: 'Mars/Olympus' }));
    expect((await dayAt(Date.UTC(2026, 2, 4, 2, 59))).today).toBe('2026-03-03');
  });

  it('throws where the browser can’t open what is there', async () => {
    await pair();
    const open = indexedDB.open.bind(indexedDB);
    // An older version than what is there: it can't be opened, and nothing is made in its place.
    const opening = vi.spyOn(indexedDB, 'open').mockImplementation((one) => open(one, 1));
    await expect(readPopup(indexedDbReader(name), null, NOW)).rejects.toThrow();
    opening.mockRestore();
  });

  it('shows the day with the newest call, and what waits', async () => {
    await pair();
    await keep(anna('athlete', 'anna', athlete));
    const call = {
      verdict: 'up',
      decision: 'accepted',
      proposedG: 300,
      bodyMassKg: 72,
      summary: 'Up.',
      at: NOW,
    };
    await keep(
      anna('weekly-call', 'call-2026-02-01', { ...call, date: '2026-02-01', markG: 290 }),
      anna('weekly-call', 'call-2026-03-01', { ...call, date: '2026-03-01', markG: 310 }),
      anna('weekly-call', 'call-2026-03-03', { ...call, date: '2026-03-03', markG: 330, removed: true }),
      anna('entry', 'e1', {
        date: '2026-03-04',
        meal: 2,
        food: 'f',
        name: 'Oats',
        grams: 80,
        per100,
        at: NOW,
      }),
      anna('entry', 'e2', {
        date: '2026-03-03',
        meal: 2,
        food: 'f',
        name: 'Oats',
        grams: 80,
        per100,
        at: NOW,
      }),
    );
    const state = await dayAt(NOW);
    expect(state.day.targets.carbohydrate.markG).toBe(310);
    expect(state.day.eaten.proteinG).toBeCloseTo(8);
    expect([state.today, state.waiting, state.rejected]).toEqual(['2026-03-04', 6, 0]);
    const yesterday = await readPopup(indexedDbReader(name), '2026-02-10', NOW);
    expect(yesterday).toMatchObject({
      day: { targets: { carbohydrate: { markG: 290 } }, eaten: { proteinG: 0 } },
    });
  });

  it('reads habits of the last weeks only, and foods that are not hidden', async () => {
    await pair();
    const food = { aliases: [], state: 'raw', per100, portions: [] };
    await keep(
      anna('athlete', 'anna', athlete),
      anna('food', 'f1', { ...food, name: 'Oats' }),
      anna('food', 'f2', { ...food, name: 'Rye', hidden: true }),
      anna('entry', 'e1', {
        date: '2026-03-01',
        meal: 2,
        food: 'f1',
        name: 'Oats',
        grams: 80,
        per100,
        at: NOW,
      }),
      anna('entry', 'e2', {
        date: '2025-03-01',
        meal: 2,
        food: 'f1',
        name: 'Oats',
        grams: 80,
        per100,
        at: NOW,
      }),
    );
    const state = await dayAt(NOW);
    const reader = indexedDbReader(name);
    const habits = await readHabits(reader, state.athlete, '2026-03-04', null);
    expect(habits?.index.foods.map(({ id }) => id)).toEqual(['f1']);
    expect(habits?.recent.map(({ id }) => id)).toEqual(['e1']);
    const again = await readHabits(reader, state.athlete, '2026-03-04', habits);
    expect(again?.index).toBe(habits?.index);
  });
});

describe('what this browser may do', () => {
  it('is to log, until the daemon says that it may look only, or write for someone else', async () => {
    await pair();
    await keep(anna('athlete', 'anna', athlete));
    expect((await dayAt(NOW)).mayWrite).toBe(true);
    await become({ rights: { athlete: null, access: 'read' } });
    expect((await dayAt(NOW)).mayWrite).toBe(false);
    await become({ rights: { athlete: 'anna', access: 'write' } });
    expect((await dayAt(NOW)).mayWrite).toBe(true);
    await become({ rights: { athlete: 'bea', access: 'write' } });
    expect((await dayAt(NOW)).mayWrite).toBe(false);
  });
});

describe('the meal that was saved last', () => {
  const MINUTE_MS = 60_000;
  const removed = (id: string) => anna('entry', id, { removed: true });
  beforeEach(async () => {
    await pair();
    await keep(anna('athlete', 'anna', athlete));
  });

  it('can be taken back in a popup that is opened anew', async () => {
    expect((await dayAt(NOW)).saved).toBeNull();
    await keep(anna('entry', 'e1', oats(NOW - 5 * MINUTE_MS, 1)));
    await keep(anna('entry', 'e2', oats(NOW)), anna('entry', 'e3', oats(NOW + 1)));
    const { saved } = await dayAt(NOW + MINUTE_MS);
    expect(saved).toEqual({ text: 'Logged 2 foods to meal 2.', undo: [removed('e2'), removed('e3')] });
    await keep(...(saved?.undo ?? []));
    expect((await dayAt(NOW + MINUTE_MS)).saved).toEqual({
      text: 'Logged Oats to meal 1.',
      undo: [removed('e1')],
    });
  });

  it('is offered for ten minutes', async () => {
    await keep(anna('entry', 'e1', oats(NOW)));
    expect((await dayAt(NOW + 9 * MINUTE_MS)).saved).not.toBeNull();
    expect((await dayAt(NOW + 11 * MINUTE_MS)).saved).toBeNull();
  });

  it('is not one that was logged before a clock that was ahead was set back', async () => {
    await keep(anna('entry', 'e1', oats(NOW + 180 * MINUTE_MS, 4)), anna('entry', 'e2', oats(NOW)));
    expect((await dayAt(NOW)).saved?.undo).toEqual([removed('e2')]);
  });

  it('is not one that another device logged, nor one that was changed since', async () => {
    await keep(anna('entry', 'e1', oats(NOW)), anna('entry', 'e2', oats(NOW + 1)));
    await keep(anna('entry', 'e2', { grams: 90 }));
    expect((await dayAt(NOW)).saved?.undo).toEqual([removed('e1')]);
    await become({ device: 'd1' });
    expect((await dayAt(NOW)).saved).toBeNull();
  });

  it('is not offered where nothing may be written', async () => {
    await keep(anna('entry', 'e1', oats(NOW)));
    await become({ rights: { athlete: null, access: 'read' } });
    expect((await dayAt(NOW)).saved).toBeNull();
  });
});
