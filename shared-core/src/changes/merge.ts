import { canonicalJson } from './canonical.ts';
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
 * The record after a change: for each field the later clock wins, and of two values under one clock the greater text.
 * Commutative, associative and idempotent over any set of changes. Returns `before` itself when nothing of it wins.
 */
export function applyChange(before: StoredRecord | undefined, change: Change): StoredRecord {
  const winning = Object.keys(change.fields).filter((field) => wins(before, change, field));
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

/** Two edits have one clock only when a browser's profile was copied, and both copies stamp under one name. */
function wins(before: StoredRecord | undefined, change: Change, field: string): boolean {
  const written =
    before !== undefined && Object.hasOwn(before.clocks, field) ? before.clocks[field] : undefined;
  if (written === undefined || change.clock !== written) {
    return written === undefined || change.clock > written;
  }
  return canonicalJson(change.fields[field] ?? null) > canonicalJson(before?.fields[field] ?? null);
}
