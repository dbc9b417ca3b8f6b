import { OWNER } from '@platewright/core/protocol/rights.ts';
import { describe, expect, it } from 'vitest';
import { edit } from '../../extension/replica/edit.ts';
import { type Daemon, sync } from '../../extension/replica/sync.ts';
import { memoryHome } from './home.ts';
import { MemoryReplica } from './memory-replica.ts';

const NOW = 1_000_000;
const OFFLINE = { ok: false, why: 'offline', detail: '' } as const;

/** A paired device with the entries a to e, which the daemon has too. */
async function pairedSetting() {
  const home = memoryHome(() => NOW);
  const { store } = home;
  const replica = new MemoryReplica();
  let ids = 0;
  const source = {
    now: () => NOW,
    newId: () => {
      ids += 1;
      return `id-${ids}`;
    },
  };
  const add = (...records: string[]) =>
    edit(
      replica,
      source,
      records.map((record) => ({
        athlete: 'anna',
        kind: 'entry',
        record,
        fields: { name: record, grams: 1 },
      })),
    );
  const access = await home.pair(OWNER);
  let requests: string[] = [];
  let left = Number.POSITIVE_INFINITY;
  const isOffline = (request: string) => {
    left -= 1;
    if (left >= 0) requests.push(request);
    return left < 0;
  };
  // Small pages, so that there are several.
  const { push, pull } = access.daemon;
  const daemon: Daemon = {
    ...access.daemon,
    push: async (changes) => (isOffline('push') ? OFFLINE : await push(changes)),
    pull: async (from, limit) => (isOffline('pull') ? OFFLINE : await pull(from, Math.min(limit, 2))),
  };
  await replica.transact(async (tx) => tx.putHead({ ...(await tx.head()), device: 'd0' }));
  await add('a', 'b', 'c', 'd', 'e');
  await sync({ ...source, replica, daemon });
  return {
    home,
    store,
    replica,
    add,
    /** Syncs; after `most` requests there is no connection any more. Returns how it ended and what was asked. */
    async sync(most = Number.POSITIVE_INFINITY) {
      requests = [];
      left = most;
      const { state } = await sync({ ...source, replica, daemon });
      return { state, requests };
    },
    logged: () => store.log.map(({ change }) => change.record),
    records: () => [...store.records.values()].map(({ id }) => id).sort(),
  };
}

describe.each(['anew', 'the same'] as const)('a store set back to an older backup, named %s', (named) => {
  it('is sent what it lacks and nothing else', async () => {
    const { home, replica, add, sync, logged } = await pairedSetting();
    const restore = await home.backup();
    await add('f');
    await sync();
    await restore(named);
    await add('g');
    expect((await sync()).state).toBe('done');
    expect(logged()).toEqual(['a', 'b', 'c', 'd', 'e', 'g', 'f']);
    expect(replica.outbox()).toEqual([]);
    expect(replica.head().recovery).toBeNull();
  });

  it('is sent the same when the device is stopped after each request', async () => {
    const { home, replica, add, sync, records } = await pairedSetting();
    const restore = await home.backup();
    await add('f');
    await sync();
    await restore(named);
    for (let most = 1; most < 12; most += 1) await sync(most);
    expect((await sync()).state).toBe('done');
    expect(records()).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
    expect(replica.outbox()).toEqual([]);
  });

  it('is noticed though its log has grown past what the device has seen', async () => {
    const { home, store, add, sync, records } = await pairedSetting();
    const restore = await home.backup();
    await add('f');
    await sync();
    await restore(named);
    const other = { athlete: 'anna', kind: 'entry', device: 'd1', clock: '000000000001-0000-d1' };
    await store.append(
      ['x', 'y', 'z'].map((record) => ({ ...other, id: record, record, fields: { name: record } })),
      (clock) => clock,
    );
    await sync();
    expect(records()).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'x', 'y', 'z']);
  });

  it('is noticed though it holds all that the device has pulled, and not what it has sent', async () => {
    const { home, add, sync, records } = await pairedSetting();
    const restore = await home.backup();
    await add('f');
    expect(await sync(1)).toEqual({ state: 'offline', requests: ['push'] });
    await restore(named);
    await add('g');
    await sync();
    expect(records()).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'g']);
  });
});

describe('a log that was folded', () => {
  it('gives a new device a snapshot and then the log, also when it is stopped between', async () => {
    const { home, store, add, sync: syncFirst } = await pairedSetting();
    await home.fold(5);
    await add('f');
    await syncFirst();
    const device = new MemoryReplica();
    const access = await home.pair(OWNER);
    const ports = { now: () => NOW, newId: () => 'never', replica: device };
    let pages = 1;
    const limping: Daemon = {
      ...access.daemon,
      async snapshot(from) {
        pages -= 1;
        return pages < 0 ? { ok: false, why: 'offline', detail: '' } : await access.daemon.snapshot(from, 2);
      },
    };
    expect((await sync({ ...ports, daemon: limping })).state).toBe('offline');
    expect(device.rows()).toHaveLength(2);
    pages = 9;
    expect((await sync({ ...ports, daemon: limping })).state).toBe('done');
    expect(device.rows()).toHaveLength(6);
    expect(device.head()).toMatchObject({ seq: await store.lastSeq(), snapshot: null });
  });

  it('changes nothing for a device that has read it', async () => {
    const { home, add, sync } = await pairedSetting();
    await home.fold(6);
    await add('f');
    expect(await sync()).toEqual({ state: 'done', requests: ['push', 'pull'] });
  });
});
