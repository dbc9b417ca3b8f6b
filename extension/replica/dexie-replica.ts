import { Dexie } from 'dexie';
import type { Database } from './database.ts';
import { HEAD, headOf } from './head.ts';
import { larderName } from './larder.ts';
import type { Replica, ReplicaTx } from './port.ts';
import { rowsOf } from './rows-of.ts';

/** The replica in IndexedDB. `changed` is called after each transaction that may have changed something. */
export function dexieReplica(database: Database, changed: () => void = () => {}): Replica {
  const { records, outbox, meta } = database;
  const tx = transactionOf(database);
  return {
    async transact(work) {
      // An async function here, because Dexie follows native promises only into one that it knows to be async.
      const result = await database.transaction('rw', records, outbox, meta, async () => await work(tx));
      changed();
      return result;
    },
    look: (work) => database.transaction('r', outbox, meta, async () => await work(tx)),
  };
}

function transactionOf(database: Database): ReplicaTx {
  const { records, outbox, meta } = database;
  return {
    async isNew() {
      return (await meta.get(HEAD)) === undefined;
    },
    async head() {
      return headOf((await meta.get(HEAD))?.value);
    },
    async putHead(head) {
      await meta.put({ name: HEAD, value: head });
    },
    records: (keys) => rowsOf(records, keys),
    async putRecords(rows) {
      if (rows.length > 0) await records.bulkPut([...rows]);
      // The larder in short is made anew when it is next wanted.
      const larders = new Set(
        rows.filter((row) => row.kind === 'food').map((row) => larderName(row.athlete)),
      );
      if (larders.size > 0) await meta.bulkDelete([...larders]);
    },
    dropRecords: (keys) => records.bulkDelete([...keys]),
    recordsAfter: (key, limit) =>
      records
        .where('[athlete+id]')
        .above(key ?? [Dexie.minKey, Dexie.minKey])
        .limit(limit)
        .toArray(),
    waiting: (limit) =>
      outbox
        .where('[state+order]')
        .between(['waiting', Dexie.minKey], ['waiting', Dexie.maxKey])
        .limit(limit)
        .toArray(),
    async outbox(orders) {
      const rows = await outbox.bulkGet([...orders]);
      return rows.filter((row) => row !== undefined);
    },
    async outboxOf(keys) {
      if (keys.length === 0) return [];
      const rows = await outbox
        .where('[change.athlete+change.record]')
        .anyOf(keys.map((key) => [...key]))
        .toArray();
      return rows.sort((a, b) => a.order - b.order);
    },
    async latestInOutbox() {
      const row = await outbox.orderBy('change.clock').last();
      return row?.change.clock ?? null;
    },
    async addToOutbox(changes) {
      if (changes.length === 0) return;
      await outbox.bulkAdd(changes.map((change) => ({ change, state: 'waiting', reason: '' })));
    },
    async putOutbox(rows) {
      if (rows.length > 0) await outbox.bulkPut([...rows]);
    },
    async dropFromOutbox(rows) {
      if (rows.length > 0) await outbox.bulkDelete(rows.map((row) => row.order));
    },
  };
}
