import 'fake-indexeddb/auto';
import type { Change } from '@platewright/core/changes/change.ts';
import { describe, expect, it } from 'vitest';
import { Database } from '../../extension/replica/database.ts';
import { dexieReplica } from '../../extension/replica/dexie-replica.ts';
import { edit } from '../../extension/replica/edit.ts';
import { larderName } from '../../extension/replica/larder.ts';
import { letGo, settle } from '../../extension/replica/outbox.ts';
import type { Replica } from '../../extension/replica/port.ts';
import { BLANK_HEAD, toRow } from '../../extension/replica/rows.ts';
import { keptTwice } from '../../extension/replica/second-copy.ts';
import { MemoryCopy } from './memory-copy.ts';
import { MemoryReplica } from './memory-replica.ts';

let databases = 0;
function freshDatabase(): Database {
  databases += 1;
  return new Database(`replica-${databases}`);
}

function change(id: string, record: string, clock: string): Change {
  return { id, athlete: 'anna', device: 'd0', clock: `${clock}-0000-d0`, kind: 'entry', record, fields: {} };
}

function row(id: string, kind = 'entry') {
  return toRow({ athlete: 'anna', id, kind, fields: { date: '2026-01-05' }, clocks: {} });
}

/** What sync and edits rest on, whichever way the replica is kept. */
function replicaContract(name: string, fresh: () => Replica) {
  describe(`${name} replica`, () => {
    it('keeps nothing of a transaction that fails', async () => {
      const replica = fresh();
      const failing = replica.transact(async (tx) => {
        await tx.putHead({ ...BLANK_HEAD, seq: 5 });
        await tx.putRecords([row('a')]);
        await tx.addToOutbox([change('c1', 'a', '000000000001')]);
        throw new Error('stopped');
      });
      await expect(failing).rejects.toThrow('stopped');
      await replica.transact(async (tx) => {
        expect(await tx.head()).toEqual(BLANK_HEAD);
        expect(await tx.records([['anna', 'a']])).toEqual([undefined]);
        expect(await tx.waiting(10)).toEqual([]);
      });
    });

    it('is new until something is kept', async () => {
      const replica = fresh();
      expect(await replica.look((tx) => tx.isNew())).toBe(true);
      await replica.transact((tx) => tx.putHead({ ...BLANK_HEAD, seq: 1 }));
      expect(await replica.look((tx) => tx.isNew())).toBe(false);
    });

    it('gives rows in the order of the keys, and walks all in the order of keys', async () => {
      const replica = fresh();
      await replica.transact((tx) => tx.putRecords([row('c'), row('a'), row('b')]));
      await replica.transact(async (tx) => {
        const found = await tx.records([
          ['anna', 'b'],
          ['anna', 'x'],
          ['anna', 'a'],
        ]);
        expect(found.map((one) => one?.id)).toEqual(['b', undefined, 'a']);
        expect((await tx.recordsAfter(null, 2)).map((one) => one.id)).toEqual(['a', 'b']);
        expect((await tx.recordsAfter(['anna', 'b'], 2)).map((one) => one.id)).toEqual(['c']);
        await tx.dropRecords([['anna', 'b']]);
        expect((await tx.recordsAfter(null, 9)).map((one) => one.id)).toEqual(['a', 'c']);
      });
    });

    it('finds a page of rows, be they new, close together, or far apart among many others', async () => {
      const replica = fresh();
      const idOf = (number: number) => `e${String(number).padStart(5, '0')}`;
      const present = Array.from({ length: 3000 }, (_, number) => idOf(number));
      await replica.transact((tx) => tx.putRecords(present.map((id) => row(id))));
      const far = present.filter((_, number) => number % 7 === 3).toReversed();
      const close = present.slice(1000, 1250);
      const absent = Array.from({ length: 250 }, (_, number) => idOf(9000 + number));
      for (const ids of [far, close, absent, [...close, ...absent, ...far]]) {
        const rows = await replica.transact((tx) => tx.records(ids.map((id) => ['anna', id])));
        expect(rows.map((one) => one?.id)).toEqual(ids.map((id) => (absent.includes(id) ? undefined : id)));
      }
    });

    it('keeps the outbox in the order of editing and knows its highest clock', async () => {
      const replica = fresh();
      await replica.transact((tx) =>
        tx.addToOutbox([
          change('c1', 'b', '000000000009'),
          change('c2', 'a', '000000000002'),
          change('c3', 'b', '000000000003'),
        ]),
      );
      await replica.transact(async (tx) => {
        const waiting = await tx.waiting(2);
        expect(waiting.map((one) => one.change.id)).toEqual(['c1', 'c2']);
        expect(await tx.latestInOutbox()).toBe('000000000009-0000-d0');
        await tx.putOutbox(waiting.slice(0, 1).map((one) => ({ ...one, state: 'rejected', reason: 'No.' })));
        expect((await tx.waiting(9)).map((one) => one.change.id)).toEqual(['c2', 'c3']);
        expect((await tx.outboxOf([['anna', 'b']])).map((one) => one.change.id)).toEqual(['c1', 'c3']);
        await tx.dropFromOutbox(waiting);
        expect(await tx.outbox(waiting.map((one) => one.order))).toEqual([]);
      });
    });

    it('undoes an edit, and shows a record as the store has it once a refused change is let go', async () => {
      const replica = fresh();
      let ids = 0;
      const source = {
        now: () => 1000,
        newId: () => {
          ids += 1;
          return `id-${ids}`;
        },
      };
      const fieldsOf = (fields: Record<string, string | number>) => ({
        athlete: 'anna',
        kind: 'entry',
        record: 'a',
        fields,
      });
      await expect(edit(replica, source, [fieldsOf({ name: 'oats' })])).rejects.toThrow('not paired');
      await replica.transact((tx) => tx.putHead({ ...BLANK_HEAD, device: 'd0' }));
      await expect(edit(replica, source, [fieldsOf({ grams: -1 })])).rejects.toThrow('entry.grams');
      await edit(replica, source, [fieldsOf({ name: 'oats', grams: 80 })]);
      const undo = await edit(replica, source, [fieldsOf({ grams: 90 })]);
      await edit(replica, source, undo);
      const shown = () => replica.transact((tx) => tx.records([['anna', 'a']]));
      expect((await shown())[0]?.fields).toEqual({ name: 'oats', grams: 80 });

      const sent = await replica.transact((tx) => tx.waiting(9));
      const [first, ...others] = sent;
      const outcomes = [
        { id: first?.change.id ?? '', outcome: 'stored', seq: 1, clock: first?.change.clock ?? '' } as const,
        ...others.map((one) => ({ id: one.change.id, outcome: 'rejected', reason: 'No.' }) as const),
      ];
      await settle(replica, sent, { outcomes, reached: { seq: 1, mark: 'a' } });
      await edit(replica, source, [fieldsOf({ name: 'rolled oats' })]);
      for (const one of others) await letGo(replica, one.order);
      expect((await shown())[0]).toMatchObject({
        fields: { name: 'rolled oats', grams: 80 },
        base: { fields: { name: 'oats' } },
      });
    });
  });
}

replicaContract('memory', () => new MemoryReplica());
replicaContract('IndexedDB', () => dexieReplica(freshDatabase()));
replicaContract('twice kept', () => keptTwice(dexieReplica(freshDatabase()), new MemoryCopy(), () => {}));

describe('the larder in short', () => {
  it('is thrown away when a food of that athlete changes, and only then', async () => {
    const database = freshDatabase();
    const replica = dexieReplica(database);
    const put = () => database.meta.put({ name: larderName('anna'), value: '[]' });
    await put();
    await replica.transact((tx) => tx.putRecords([row('a')]));
    expect(await database.meta.get(larderName('anna'))).toBeDefined();
    await replica.transact((tx) => tx.putRecords([row('f', 'food')]));
    expect(await database.meta.get(larderName('anna'))).toBeUndefined();
  });
});

describe('pages that show the replica', () => {
  it('are told of what was written, not of a look', async () => {
    let told = 0;
    const replica = dexieReplica(freshDatabase(), () => {
      told += 1;
    });
    expect(await replica.look((tx) => tx.head())).toEqual(BLANK_HEAD);
    expect(told).toBe(0);
    await replica.transact((tx) => tx.putRecords([row('a')]));
    expect(told).toBe(1);
  });
});
