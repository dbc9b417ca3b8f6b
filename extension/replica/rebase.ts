import type { Change } from '@platewright/core/changes/change.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import type { ReplicaTx } from './port.ts';
import { baseOf, keyOf, type OutboxRow, type RecordKey, type RecordRow, targetOf, toRow } from './rows.ts';

/** Rows under work in one transaction, found by key. */
export class RowSet {
  readonly #rows = new Map<string, RecordRow>();
  readonly #touched = new Set<string>();

  static async load(tx: ReplicaTx, keys: readonly RecordKey[]): Promise<RowSet> {
    const distinct = [...new Map(keys.map((key) => [key.join(), key])).values()];
    const rows = await tx.records(distinct);
    return RowSet.of(rows.filter((row) => row !== undefined));
  }

  static of(rows: readonly RecordRow[]): RowSet {
    const set = new RowSet();
    for (const row of rows) set.#rows.set(keyOf(row).join(), row);
    return set;
  }

  get(key: RecordKey): RecordRow | undefined {
    return this.#rows.get(key.join());
  }

  put(row: RecordRow): void {
    const key = keyOf(row).join();
    this.#rows.set(key, row);
    this.#touched.add(key);
  }

  /** Rows that the outbox holds changes of. */
  edited(): RecordRow[] {
    return [...this.#rows.values()].filter((row) => row.base !== undefined);
  }

  /** Rows that were put since they were loaded. */
  touched(): RecordRow[] {
    return [...this.#rows].filter(([key]) => this.#touched.has(key)).map(([, row]) => row);
  }
}

/** Notes a change that the daemon holds. Where the outbox has more of the record, only the base moves; see `rebase`. */
export function acknowledge(rows: RowSet, change: Change): void {
  const row = rows.get(targetOf(change));
  if (row !== undefined && row.base !== undefined) {
    rows.put({ ...row, base: applyChange(row.base ?? undefined, change) });
    return;
  }
  const record = applyChange(row, change);
  if (record !== row) rows.put(toRow(record));
}

/**
 * Makes each row that has a base again what it must be: its base with its changes in the outbox applied. `gone` are
 * outbox rows that this transaction takes out. Rows that neither the daemon nor the outbox knows any more are dropped.
 */
export async function rebase(tx: ReplicaTx, rows: RowSet, gone: readonly OutboxRow[]): Promise<void> {
  await tx.dropFromOutbox(gone);
  const edited = rows.edited();
  const left = Map.groupBy(await tx.outboxOf(edited.map(keyOf)), (row) => targetOf(row.change).join());
  const kept = rows.touched().filter((row) => row.base === undefined);
  const dropped: RecordKey[] = [];
  for (const row of edited) {
    const base = baseOf(row);
    const changes = (left.get(keyOf(row).join()) ?? []).map((waiting) => waiting.change);
    const record = changes.reduce<StoredRecord | undefined>(applyChange, base ?? undefined);
    if (record === undefined) dropped.push(keyOf(row));
    else kept.push(changes.length === 0 ? toRow(record) : toRow(record, base));
  }
  await tx.putRecords(kept);
  await tx.dropRecords(dropped);
}
