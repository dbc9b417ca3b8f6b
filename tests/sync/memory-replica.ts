import type { Clock } from '@platewright/core/changes/clock.ts';
import type { Replica, ReplicaTx } from '../../extension/replica/port.ts';
import {
  BLANK_HEAD,
  type Head,
  keyOf,
  type OutboxRow,
  type RecordKey,
  type RecordRow,
  targetOf,
} from '../../extension/replica/rows.ts';

/** Fewer than production asks for, so that what goes on page by page is stopped in the middle too. */
const MOST_ROWS = 3;
const MOST_WAITING = 6;

/**
 * A replica in memory with the same promises as the one in IndexedDB: transactions run one after the other, and each is
 * kept whole or not at all. It works in place and takes back what a failed transaction did.
 */
export class MemoryReplica implements Replica {
  #head: Head = BLANK_HEAD;
  #records = new Map<string, RecordRow>();
  #outbox = new Map<number, OutboxRow>();
  #nextOrder = 1;
  #turn: Promise<unknown> = Promise.resolve();
  #undo: (() => void)[] = [];
  readonly #tx = this.#transaction();
  /** Called at each await of a transaction; may throw, as a program that is killed there. */
  onAwait: () => void = () => {};

  transact<T>(work: (tx: ReplicaTx) => Promise<T>): Promise<T> {
    const result = this.#turn.then(() => this.#run(work));
    this.#turn = result.catch(() => {});
    return result;
  }

  look<T>(work: (tx: ReplicaTx) => Promise<T>): Promise<T> {
    return this.transact(work);
  }

  rows(): RecordRow[] {
    return [...this.#records.values()];
  }

  row(athlete: string, id: string): RecordRow | undefined {
    return this.#records.get(textOf([athlete, id]));
  }

  outbox(): OutboxRow[] {
    return [...this.#outbox.values()];
  }

  head(): Head {
    return this.#head;
  }

  /** Nothing is here any more, as if nothing had ever been. */
  clear(): void {
    new MemoryReplica().saved()(this);
  }

  /** A copy of the profile folder. It can be put in the place of any replica's. */
  saved(): (replica: MemoryReplica) => void {
    const [head, records, outbox] = [this.#head, [...this.#records], [...this.#outbox]];
    const nextOrder = this.#nextOrder;
    return (replica) => {
      replica.#head = head;
      replica.#records = new Map(records);
      replica.#outbox = new Map(outbox);
      replica.#nextOrder = nextOrder;
    };
  }

  async #run<T>(work: (tx: ReplicaTx) => Promise<T>): Promise<T> {
    try {
      const value = await work(this.#tx);
      this.onAwait();
      this.#undo = [];
      return await this.#told(value);
    } catch (error) {
      for (const undo of this.#undo.reverse()) undo();
      this.#undo = [];
      throw error;
    }
  }

  /** The transaction is kept by now, and a program may be killed before it hears of it. */
  async #told<T>(value: T): Promise<T> {
    this.onAwait();
    return value;
  }

  #setRecord(key: string, row: RecordRow | undefined): void {
    const before = this.#records.get(key);
    this.#undo.push(() => put(this.#records, key, before));
    put(this.#records, key, row);
  }

  #setOutbox(order: number, row: OutboxRow | undefined): void {
    const before = this.#outbox.get(order);
    this.#undo.push(() => put(this.#outbox, order, before));
    put(this.#outbox, order, row);
  }

  #inOrder(): OutboxRow[] {
    return [...this.#outbox.values()].sort((a, b) => a.order - b.order);
  }

  #transaction(): ReplicaTx {
    const step = <A extends unknown[], T>(work: (...args: A) => T) => {
      return async (...args: A): Promise<T> => {
        this.onAwait();
        return work(...args);
      };
    };
    return {
      isNew: step(() => this.#head === BLANK_HEAD),
      head: step(() => this.#head),
      putHead: step((head: Head) => {
        const before = this.#head;
        this.#undo.push(() => {
          this.#head = before;
        });
        this.#head = head;
      }),
      records: step((keys: readonly RecordKey[]) => keys.map((key) => this.#records.get(textOf(key)))),
      putRecords: step((rows: readonly RecordRow[]) => {
        for (const row of rows) this.#setRecord(textOf(keyOf(row)), row);
      }),
      dropRecords: step((keys: readonly RecordKey[]) => {
        for (const key of keys) this.#setRecord(textOf(key), undefined);
      }),
      recordsAfter: step((key: RecordKey | null, limit: number) =>
        [...this.#records.keys()]
          .filter((text) => key === null || text > textOf(key))
          .sort()
          .slice(0, Math.min(limit, MOST_ROWS))
          .flatMap((text) => this.#records.get(text) ?? []),
      ),
      waiting: step((limit: number) =>
        this.#inOrder()
          .filter((row) => row.state === 'waiting')
          .slice(0, Math.min(limit, MOST_WAITING)),
      ),
      outbox: step((orders: readonly number[]) => orders.flatMap((order) => this.#outbox.get(order) ?? [])),
      outboxOf: step((keys: readonly RecordKey[]) => {
        if (this.#outbox.size === 0 || keys.length === 0) return [];
        const wanted = new Set(keys.map(textOf));
        return this.#inOrder().filter((row) => wanted.has(textOf(targetOf(row.change))));
      }),
      latestInOutbox: step(() => {
        let latest: Clock | null = null;
        for (const { change } of this.#outbox.values()) {
          if (latest === null || change.clock > latest) latest = change.clock;
        }
        return latest;
      }),
      addToOutbox: step((changes: readonly OutboxRow['change'][]) => {
        for (const change of changes) {
          this.#setOutbox(this.#nextOrder, { order: this.#nextOrder, change, state: 'waiting', reason: '' });
          this.#nextOrder += 1;
        }
      }),
      putOutbox: step((rows: readonly OutboxRow[]) => {
        for (const row of rows) this.#setOutbox(row.order, row);
      }),
      dropFromOutbox: step((rows: readonly OutboxRow[]) => {
        for (const { order } of rows) this.#setOutbox(order, undefined);
      }),
    };
  }
}

function textOf([athlete, id]: RecordKey): string {
  return `${athlete},${id}`;
}

function put<K, V>(map: Map<K, V>, key: K, value: V | undefined): void {
  if (value === undefined) map.delete(key);
  else map.set(key, value);
}
