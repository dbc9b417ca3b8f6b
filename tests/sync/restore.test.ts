import { PROTOCOL } from '@platewright/core/protocol/version.ts';
import { describe, expect, it } from 'vitest';
import { edit } from '../../extension/replica/edit.ts';
import { type Daemon, sync } from '../../extension/replica/sync.ts';
import { MemoryReplica } from './memory-replica.ts';
import { MemoryStore } from './memory-store.ts';

function setting() {
  const store = new MemoryStore();
  const replica = new MemoryReplica();
  let ids = 0;
  let pulls = Number.POSITIVE_INFINITY;
  const head = () => ({ store: store.id, protocol: PROTOCOL, now: 1_000_000 });
  const daemon: Daemon = {
    push: async (changes) => ({
      ok: true,
      value: { ...head(), outcomes: await store.append(changes, (clock) => clock) },
    }),
    pull: async (since) => {
      pulls -= 1;
      if (pulls < 0) return { ok: false, why: 'offline', detail: '' };
      return { ok: true, value: { ...head(), ...(await store.changesSince(since, 2)) } };
    },
  };
  const source = {
    now: () => 1_000_000,
    newId: () => {
      ids += 1;
      return `id-${ids}`;
    },
  };
  const add = (record: string) =>
    edit(replica, source, [{ athlete: 'anna', kind: 'entry', record, fields: { name: record, grams: 100 } }]);
  return {
    store,
    replica,
    add,
    sync: () => sync({ ...source, replica, daemon }),
    stopAfterPulls: (count: number) => {
      pulls = count;
    },
  };
}

async function pairedSetting() {
  const world = setting();
  await world.replica.transact(async (tx) => tx.putHead({ ...(await tx.head()), device: 'd0' }));
  return world;
}

describe('a store restored from an older backup', () => {
  it('is sent what it lacks and nothing else', async () => {
    const { store, replica, add, sync } = await pairedSetting();
    for (const record of ['a', 'b', 'c', 'd', 'e']) await add(record);
    await sync();
    const restore = store.backup();
    await add('f');
    await sync();
    restore('store-2');
    await add('g');
    expect(await sync()).toEqual({ state: 'done', detail: '' });
    expect(store.log.map((change) => change.record)).toEqual(['a', 'b', 'c', 'd', 'e', 'g', 'f']);
    expect(replica.outbox()).toEqual([]);
    expect(replica.head().recovery).toBeNull();
  });

  it('is sent the same when the device is stopped in the middle', async () => {
    const { store, replica, add, sync, stopAfterPulls } = await pairedSetting();
    for (const record of ['a', 'b', 'c', 'd', 'e']) await add(record);
    await sync();
    const restore = store.backup();
    await add('f');
    await sync();
    restore('store-2');
    stopAfterPulls(2);
    expect((await sync()).state).toBe('offline');
    stopAfterPulls(100);
    expect((await sync()).state).toBe('done');
    expect(store.log.map((change) => change.record)).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
    expect(replica.outbox()).toEqual([]);
  });
});
