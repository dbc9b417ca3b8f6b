import { canonicalJson } from '@platewright/core/changes/canonical.ts';
import type { Change } from '@platewright/core/changes/change.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import { placeKey } from './record-row.ts';

export type Fold = ReturnType<typeof createFold>;

/**
 * Holds records against the changes that are in the log. When the beginning of the log is folded away (`partial`), a
 * record may hold more than they say, and one that they do not name is not missed.
 */
export function createFold(partial: boolean) {
  const folded = new Map<string, StoredRecord>();
  const there = new Set<string>();

  return {
    /** The changes of the log, in any order. */
    add(change: Change): void {
      const of = placeKey(change.athlete, change.record);
      folded.set(of, applyChange(folded.get(of), change));
    },

    /** Notes that a record is there, whether it can be read or not. */
    isThere(athlete: string, id: string): void {
      there.add(placeKey(athlete, id));
    },

    /** What is wrong with a record, or null. */
    compare(record: StoredRecord): string | null {
      const of = placeKey(record.athlete, record.id);
      const expected = folded.get(of);
      if (expected === undefined)
        return partial ? null : `record ${record.id} of athlete ${record.athlete}: no change made it`;
      const same = partial
        ? holds(record, expected)
        : canonicalJson({ ...record }) === canonicalJson({ ...expected });
      return same ? null : `record ${record.id} of athlete ${record.athlete}: it differs from its changes`;
    },

    /** Records of the changes that are not there. */
    missing(): string[] {
      return [...folded]
        .filter(([of]) => !there.has(of))
        .map(([, { athlete, id }]) => `record ${id} of athlete ${athlete}: it is missing`);
    },
  };
}

/** Whether each field of a record was written as late as its changes say, or later. */
function holds(record: StoredRecord, expected: StoredRecord): boolean {
  return Object.entries(expected.clocks).every(([field, clock]) => {
    const written = record.clocks[field];
    if (written === undefined || written < clock) return false;
    if (written > clock) return true;
    // Of two values under one clock the greater text is kept.
    return canonicalJson(record.fields[field] ?? null) >= canonicalJson(expected.fields[field] ?? null);
  });
}
