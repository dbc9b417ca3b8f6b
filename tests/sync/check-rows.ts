import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import { fail } from './ledger.ts';
import type { SimulatedDevice } from './simulated-device.ts';

/** Each row is its base with its changes in the outbox, so what waits or was rejected shows where it was typed. */
export function checkRows(device: SimulatedDevice): void {
  for (const { athlete, record } of device.changes()) {
    if (device.row(athlete, record)?.base === undefined) fail('what was typed does not show', record);
  }
  for (const row of device.replica.rows()) {
    if (row.base === undefined) continue;
    const changes = device
      .changes()
      .filter(({ athlete, record }) => athlete === row.athlete && record === row.id);
    if (changes.length === 0)
      fail('a record stands apart from the store, and the outbox does not say why', row);
    const made = changes.reduce<StoredRecord | undefined>(applyChange, row.base ?? undefined);
    if (made === undefined || !isSame(row, made)) fail('a record is not its base and its changes', row);
  }
}

/** Whether two records have the same fields under the same clocks. */
export function isSame(a: StoredRecord, b: StoredRecord): boolean {
  const fields = Object.keys(a.fields);
  return (
    a.kind === b.kind &&
    fields.length === Object.keys(b.fields).length &&
    fields.every((field) => a.fields[field] === b.fields[field] && a.clocks[field] === b.clocks[field])
  );
}
