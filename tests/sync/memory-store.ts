import type { Change } from '@platewright/core/changes/change.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { whyImpossible } from '../../daemon/src/store/refuse.ts';
import type { Store } from '../../daemon/src/store/store.ts';

/** The part of a store that sync needs. */
type SyncStore = Pick<Store, 'id' | 'append' | 'changesSince'>;

/** A store in memory, for histories by the thousand. Its log and records can be looked at and set back. */
export class MemoryStore implements SyncStore {
  id = 'store-1';
  log: Change[] = [];
  records = new Map<string, StoredRecord>();
  #places = new Map<string, number>();

  async append(changes: readonly Change[], stamp: Parameters<Store['append']>[1]): Promise<Outcome[]> {
    return changes.map((sent): Outcome => {
      const at = this.#places.get(sent.id) ?? -1;
      const known = this.log[at];
      if (known !== undefined) return { id: sent.id, outcome: 'known', seq: at + 1, clock: known.clock };
      const key = `${sent.athlete},${sent.record}`;
      const before = this.records.get(key);
      const reason = whyImpossible(sent, before ?? null);
      if (reason !== null) return { id: sent.id, outcome: 'rejected', reason };
      const change = { ...sent, clock: stamp(sent.clock, sent.device) };
      this.#places.set(change.id, this.log.push(change) - 1);
      this.records.set(key, applyChange(before, change));
      return { id: change.id, outcome: 'stored', seq: this.log.length, clock: change.clock };
    });
  }

  async changesSince(seq: number, limit: number): Promise<{ changes: Change[]; seq: number; more: boolean }> {
    const changes = this.log.slice(seq, seq + limit);
    return { changes, seq: seq + changes.length, more: this.log.length > seq + changes.length };
  }

  /** A backup, to be restored later under a new name. */
  backup(): (newId: string) => void {
    const log = [...this.log];
    const records = new Map(this.records);
    return (newId) => {
      this.id = newId;
      this.log = [...log];
      this.records = new Map(records);
      this.#places = new Map(log.map((change, place) => [change.id, place]));
    };
  }
}
