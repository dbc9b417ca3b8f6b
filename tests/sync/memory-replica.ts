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

interface State {
  head: Head;
  records: Map<string, RecordRow>;
  outbox: Map<number, OutboxRow>;
  nextOrder: number;
}

/** A replica in memory with the same promises as the one in IndexedDB: a transaction is kept whole or not at all. */
export class MemoryReplica implements Replica {
  #state: State = { head: BLANK_HEAD, records: new Map(), outbox: new Map(), nextOrder: 1 };
  #turn: Promise<unknown> = Promise.resolve();
  /** Called before and after each transaction is kept; may throw, as a program that is killed there. */
  onTransaction: (when: 'before' | 'after') => void = () => {};

  transact<T>(work: (tx: ReplicaTx) => Promise<T>): Promise<T> {
    const result = this.#turn.then(async () => {
      const next = { ...this.#state };
      const value = await work(transactionOf(next, this.#state));
      this.onTransaction('before');
      this.#state = next;
      this.onTransaction('after');
      return value;
    });
    this.#turn = result.catch(() => {});
    return result;
  }

  rows(): RecordRow[] {
    return [...this.#state.records.values()];
  }

  outbox(): OutboxRow[] {
    return [...this.#state.outbox.values()];
  }

  head(): Head {
    return this.#state.head;
  }

  /** A copy of the profile folder, to come back to later. */
  saved(): () => void {
    const state = this.#state;
    return () => {
      this.#state = state;
    };
  }
}

function textOf(key: RecordKey): string {
  return key.join();
}

/** Works on `state`, whose tables are those of `before` until something is written. */
function transactionOf(state: State, before: State): ReplicaTx {
  const records = () => {
    if (state.records === before.records) state.records = new Map(before.records);
    return state.records;
  };
  const outbox = () => {
    if (state.outbox === before.outbox) state.outbox = new Map(before.outbox);
    return state.outbox;
  };
  const inOrder = (): OutboxRow[] => [...state.outbox.values()].sort((a, b) => a.order - b.order);
  return {
    head: async () => state.head,
    putHead: async (head) => {
      state.head = head;
    },
    records: async (keys) => keys.map((key) => state.records.get(textOf(key))),
    putRecords: async (rows) => {
      for (const row of rows) records().set(textOf(keyOf(row)), row);
    },
    dropRecords: async (keys) => {
      for (const key of keys) records().delete(textOf(key));
    },
    recordsAfter: async (key, limit) => {
      const sorted = [...state.records.keys()].sort();
      const from = key === null ? sorted : sorted.filter((text) => text > textOf(key));
      return from.slice(0, limit).flatMap((text) => state.records.get(text) ?? []);
    },
    waiting: async (limit) =>
      inOrder()
        .filter((row) => row.state === 'waiting')
        .slice(0, limit),
    outbox: async (orders) => orders.flatMap((order) => state.outbox.get(order) ?? []),
    outboxOf: async (keys) => {
      const wanted = new Set(keys.map(textOf));
      return inOrder().filter((row) => wanted.has(textOf(targetOf(row.change))));
    },
    latestInOutbox: async () => {
      const clocks: Clock[] = [...state.outbox.values()].map((row) => row.change.clock);
      return clocks.sort().at(-1) ?? null;
    },
    addToOutbox: async (changes) => {
      for (const change of changes) {
        outbox().set(state.nextOrder, { order: state.nextOrder, change, state: 'waiting', reason: '' });
        state.nextOrder += 1;
      }
    },
    putOutbox: async (rows) => {
      for (const row of rows) outbox().set(row.order, row);
    },
    dropFromOutbox: async (orders) => {
      for (const order of orders) outbox().delete(order);
    },
  };
}
