import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Store } from '../store/store.ts';
import { createTurns } from './turns.ts';

/** Changes since the last look beyond which all is read again. */
const MOST_CHANGES = 2000;

interface Held {
  /** Number of the last change that is in it. */
  seq: number;
  records: readonly StoredRecord[];
}

export type Athletes = ReturnType<typeof createAthletes>;

/**
 * The records of all athletes in memory, because there may be thousands and every page asks for them: the log tells which
 * changed since, and only those are read again.
 */
export function createAthletes(store: Store) {
  const inTurn = createTurns();
  let held: Held | null = null;

  async function load(): Promise<Held> {
    const seq = await store.lastSeq();
    return { seq, records: await store.records({ kind: 'athlete' }) };
  }

  async function follow(before: Held): Promise<Held> {
    const page = await store.changesSince(before.seq, MOST_CHANGES);
    if (page === 'folded' || page.more) return await load();
    const { seq, changes } = page;
    const changed = new Set(changes.filter(({ kind }) => kind === 'athlete').map(({ record }) => record));
    if (changed.size === 0) return { ...before, seq };
    const fresh = await Promise.all([...changed].map((id) => store.record(id, id)));
    const kept = before.records.filter(({ id }) => !changed.has(id));
    const records = [...kept, ...fresh.filter((record) => record !== null)];
    return { seq, records: records.sort((a, b) => (a.id < b.id ? -1 : 1)) };
  }

  return {
    /** Records of all athletes, or of the one named, as they stand; by id, removed ones too. */
    async of(athlete: string | undefined): Promise<readonly StoredRecord[]> {
      if (athlete !== undefined) {
        return [await store.record(athlete, athlete)].filter((record) => record !== null);
      }
      return await inTurn(async () => {
        held = held === null ? await load() : await follow(held);
        return held.records;
      });
    },
  };
}
