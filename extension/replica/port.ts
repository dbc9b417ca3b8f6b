import type { Change } from '@platewright/core/changes/change.ts';
import type { Clock } from '@platewright/core/changes/clock.ts';
import type { Head, OutboxRow, RecordKey, RecordRow } from './rows.ts';

/** What replica code may do inside one transaction. Nothing of it is kept unless the whole transaction is. */
export interface ReplicaTx {
  /** Whether nothing was ever kept here. */
  isNew(): Promise<boolean>;
  head(): Promise<Head>;
  putHead(head: Head): Promise<void>;
  /** Rows in the order of the keys; undefined where there is none. */
  records(keys: readonly RecordKey[]): Promise<(RecordRow | undefined)[]>;
  putRecords(rows: readonly RecordRow[]): Promise<void>;
  dropRecords(keys: readonly RecordKey[]): Promise<void>;
  /** The next rows after a key, in the order of keys; from the first when null. */
  recordsAfter(key: RecordKey | null, limit: number): Promise<RecordRow[]>;
  /** The oldest waiting changes, in order. */
  waiting(limit: number): Promise<OutboxRow[]>;
  /** Outbox rows with these orders; those gone are left out. */
  outbox(orders: readonly number[]): Promise<OutboxRow[]>;
  /** Outbox rows of these records, in order. */
  outboxOf(keys: readonly RecordKey[]): Promise<OutboxRow[]>;
  /** The highest clock of any change in the outbox. */
  latestInOutbox(): Promise<Clock | null>;
  addToOutbox(changes: readonly Change[]): Promise<void>;
  putOutbox(rows: readonly OutboxRow[]): Promise<void>;
  dropFromOutbox(rows: readonly OutboxRow[]): Promise<void>;
}

/** What only tells where the replica stands. */
export type ReplicaLook = Pick<ReplicaTx, 'isNew' | 'head' | 'waiting'>;

/** Where the replica is kept: IndexedDB in the browser, memory in the simulated world. */
export interface Replica {
  /** All of `work` becomes durable, or nothing of it. Resolves only once it is on disk. */
  transact<T>(work: (tx: ReplicaTx) => Promise<T>): Promise<T>;
  /** Looks at one state of the replica, changes nothing and tells nobody. */
  look<T>(work: (tx: ReplicaLook) => Promise<T>): Promise<T>;
}
