import type { Change, Json } from './change.ts';
import type { Clock } from './clock.ts';

/** A record as replicas keep it: each field with the clock that last wrote it. Its identity is athlete and id. */
export interface StoredRecord {
  athlete: string;
  id: string;
  kind: string;
  fields: Record<string, Json>;
  clocks: Record<string, Clock>;
}

/**
 * The record after a change: for each field the later clock wins. Commutative, associative and idempotent over any set
 * of changes. Returns `before` itself when nothing of the change wins.
 */
export function applyChange(before: StoredRecord | undefined, change: Change): StoredRecord {
  const winning = Object.keys(change.fields).filter((field) => {
    const written =
      before !== undefined && Object.hasOwn(before.clocks, field) ? before.clocks[field] : undefined;
    return written === undefined || change.clock > written;
  });
  if (before !== undefined && winning.length === 0) return before;
  const fields = { ...before?.fields };
  const clocks = { ...before?.clocks };
  for (const field of winning) {
    const value = change.fields[field];
    if (value === undefined) continue;
    fields[field] = value;
    clocks[field] = change.clock;
  }
  return { athlete: change.athlete, id: change.record, kind: change.kind, fields, clocks };
}

/** The record after its writer learned that the daemon stored a change under another clock (its own was far ahead). */
export function restamp(record: StoredRecord, from: Clock, to: Clock): StoredRecord {
  const clocks = { ...record.clocks };
  for (const [field, clock] of Object.entries(clocks)) if (clock === from) clocks[field] = to;
  return { ...record, clocks };
}
