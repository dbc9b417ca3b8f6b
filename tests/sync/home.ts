import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { whyNoWrite } from '@platewright/core/protocol/rights.ts';
import { PROTOCOL } from '@platewright/core/protocol/version.ts';
import { placeOf, pullPage, snapshotPage } from '../../daemon/src/server/log-pages.ts';
import { clampAhead } from '../../daemon/src/server/writer.ts';
import type { Answer, Daemon } from '../../extension/replica/sync.ts';
import { MemoryStore } from './memory-store.ts';

/** What a paired device has of a daemon: as good as a token. */
export interface Access {
  /** Name of the store, as it was then. */
  store: string;
  rights: Rights;
  /** The daemon as it answers over a network without fault. */
  daemon: Daemon;
  revoke(): Promise<void>;
}

/** A daemon and its store, as the simulated world needs it. */
export interface Home {
  pair(rights: Rights): Promise<Access>;
  fold(seq: number): Promise<void>;
  lastSeq(): Promise<number>;
  records(): Promise<StoredRecord[]>;
  /** Ids of the changes in the log that is not folded. */
  logged(): Promise<string[]>;
  /** Copies the store; what is returned puts the copy in its place, under its own name or a new one. */
  backup(): Promise<(named: 'anew' | 'the same') => Promise<void>>;
  close(): Promise<void>;
}

const UNPAIRED = { ok: false, why: 'unpaired', detail: 'This device was removed.' } as const;

/** The daemon's own decisions on a store in memory. */
export function memoryHome(now: () => number): Home & { store: MemoryStore } {
  const store = new MemoryStore();
  let names = 1;
  const underWay = new Set<Promise<unknown>>();
  return {
    store,
    async pair(rights) {
      let revoked = false;
      const head = () => ({ store: store.id, protocol: PROTOCOL, now: now(), rights });
      const answer = async <T>(say: () => Promise<T>): Promise<Answer<T>> => {
        if (revoked) return UNPAIRED;
        const said = say();
        underWay.add(said);
        try {
          return { ok: true, value: await said };
        } finally {
          underWay.delete(said);
        }
      };
      return {
        store: store.id,
        rights,
        daemon: {
          push: (changes) =>
            answer(async () => {
              const stamp = clampAhead(now(), await store.latestClock());
              const taken = changes.filter(({ athlete }) => whyNoWrite(rights, athlete) === null);
              const refused = changes.flatMap(({ id, athlete }) => {
                const reason = whyNoWrite(rights, athlete);
                return reason === null ? [] : ({ id, outcome: 'rejected', reason } as const);
              });
              const outcomes = [...(await store.append(taken, stamp)), ...refused];
              return { ...head(), outcomes, reached: await placeOf(store, outcomes) };
            }),
          pull: ({ seq: since, mark, reached }, limit) =>
            answer(async () => ({
              ...head(),
              ...(await pullPage(store, rights, { since, mark, reached, limit })),
            })),
          snapshot: ({ snapshot, reached }, limit) =>
            answer(async () => {
              const [athlete = '', id = ''] = snapshot?.after ?? [];
              const after = snapshot === null ? null : { athlete, id };
              return { ...head(), ...(await snapshotPage(store, rights, { after, reached, limit })) };
            }),
        },
        async revoke() {
          revoked = true;
        },
      };
    },
    async fold(seq) {
      await store.fold(seq);
    },
    lastSeq: () => store.lastSeq(),
    records: async () => [...store.records.values()],
    logged: async () => store.log.map(({ change }) => change.id),
    async backup() {
      const { id } = store;
      const restore = store.backup();
      return async (named) => {
        // No request reads half of one store and half of another: a daemon is stopped before its store is replaced.
        await Promise.all(underWay);
        if (named === 'anew') names += 1;
        restore(named === 'anew' ? `store-${names}` : id);
      };
    },
    async close() {},
  };
}
