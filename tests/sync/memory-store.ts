import type { Change } from '@platewright/core/changes/change.ts';
import { type Clock, laterClock } from '@platewright/core/changes/clock.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { whyImpossible } from '../../daemon/src/store/refuse.ts';
import type { RecordPlace, Store } from '../../daemon/src/store/store.ts';

/** The part of a store that sync needs. */
export type SyncStore = Pick<
  Store,
  'id' | 'append' | 'changesSince' | 'fold' | 'lastSeq' | 'latestClock' | 'mark' | 'snapshot'
>;

interface Logged {
  seq: number;
  change: Change;
}

/** A store in memory, for histories by the thousand; a test holds it against the ones on disk. */
export class MemoryStore implements SyncStore {
  id = 'store-1';
  /** What is not folded, oldest first. */
  log: Logged[] = [];
  records = new Map<string, StoredRecord>();
  #known = new Map<string, { seq: number; clock: Clock }>();
  /** By sequence number; folded ones but the last are null. */
  #marks: (string | null)[] = [''];
  #latest: Clock | null = null;
  #names = new Map<string, string>();

  async append(changes: readonly Change[], stamp: Parameters<Store['append']>[1]): Promise<Outcome[]> {
    return changes.map((sent): Outcome => {
      const known = this.#known.get(sent.id);
      if (known !== undefined) return { id: sent.id, outcome: 'known', ...known };
      const key = `${sent.athlete},${sent.record}`;
      const before = this.records.get(key);
      const reason = whyImpossible(sent, before ?? null);
      if (reason !== null) return { id: sent.id, outcome: 'rejected', reason };
      const clock = stamp(sent.clock, sent.device);
      const change = { ...sent, clock };
      const seq = this.#marks.length;
      this.log.push({ seq, change });
      this.#marks.push(this.#nameOf(`${this.#marks[seq - 1]} ${change.id} ${clock}`));
      this.#known.set(change.id, { seq, clock });
      this.#latest = laterClock(this.#latest, clock);
      this.records.set(key, applyChange(before, change));
      return { id: change.id, outcome: 'stored', seq, clock };
    });
  }

  async changesSince(seq: number, limit: number, athlete?: string): ReturnType<Store['changesSince']> {
    const first = this.log[0]?.seq ?? this.#marks.length;
    if (seq < first - 1) return 'folded';
    const later = this.log.slice(Math.max(0, seq - first + 1));
    const seen = later.filter(({ change }) => athlete === undefined || change.athlete === athlete);
    const page = seen.slice(0, limit);
    const more = seen.length > page.length;
    const end = more ? page.at(-1) : later.at(-1);
    return { changes: page.map(({ change }) => change), seq: end?.seq ?? seq, more };
  }

  async snapshot(after: RecordPlace | null, limit: number, athlete?: string): ReturnType<Store['snapshot']> {
    const start = after === null ? '' : `${after.athlete},${after.id}`;
    const keys = [...this.records.keys()].filter((key) => key > start).sort();
    const records = keys.flatMap((key) => this.records.get(key) ?? []);
    const seen = records.filter((record) => athlete === undefined || record.athlete === athlete);
    return { records: seen.slice(0, limit), seq: this.#marks.length - 1 };
  }

  async fold(seq: number): Promise<number> {
    const gone = this.log.filter((logged) => logged.seq < seq);
    this.log = this.log.slice(gone.length);
    for (const { seq: folded } of gone) this.#marks[folded - 1] = null;
    this.#marks[0] = '';
    return gone.length;
  }

  async lastSeq(): Promise<number> {
    return this.#marks.length - 1;
  }

  async latestClock(): Promise<Clock | null> {
    return this.#latest;
  }

  async mark(seq: number): Promise<string | null> {
    return this.#marks[seq] ?? null;
  }

  /** A copy of the file, to be put in the store's place later, under its own name or a new one. */
  backup(): (id: string) => void {
    const [log, records, known, marks] = [this.log, [...this.records], [...this.#known], [...this.#marks]];
    const [kept, latest] = [log.length, this.#latest];
    return (id) => {
      this.id = id;
      this.log = log.slice(0, kept);
      this.records = new Map(records);
      this.#known = new Map(known);
      this.#marks = [...marks];
      this.#latest = latest;
    };
  }

  /** Equal texts have one name: as good as a checksum, and quicker. */
  #nameOf(text: string): string {
    const name = this.#names.get(text) ?? `${this.#names.size + 1}`;
    this.#names.set(text, name);
    return name;
  }
}
