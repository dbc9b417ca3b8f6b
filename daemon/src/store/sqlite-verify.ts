import type { DatabaseSync } from 'node:sqlite';
import { canonicalJson } from '@platewright/core/changes/canonical.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import { chainHash } from './chain.ts';
import { type ChangeLog, parseChange } from './sqlite-log.ts';
import type { RecordTable } from './sqlite-records.ts';
import { bytes, type Row, text, whole } from './sqlite-rows.ts';

/** Faults of a SQLite store, a line each: of the file, of the chain of checksums, of records that differ from their changes. */
export function findFaults(db: DatabaseSync, log: ChangeLog, records: RecordTable): string[] {
  const faults = db
    .prepare('PRAGMA integrity_check(20)')
    .all()
    .map((row) => text(row, 'integrity_check'))
    .filter((line) => line !== 'ok')
    .map((line) => `file: ${line}`);
  const folded = new Map<string, StoredRecord>();
  return [...faults, ...logFaults(db, log, folded), ...recordFaults(db, records, folded)];
}

/** Walks the chain, and folds the changes it passes into `folded`. */
function logFaults(db: DatabaseSync, log: ChangeLog, folded: Map<string, StoredRecord>): string[] {
  const faults: string[] = [];
  const head = log.head();
  let before: Uint8Array = new Uint8Array(32);
  let seq = 0;
  for (const row of db.prepare('SELECT seq, id, body, hash FROM changes ORDER BY seq').iterate()) {
    seq += 1;
    const fault = rowFault(row, seq, before);
    before = bytes(row, 'hash');
    seq = whole(row, 'seq');
    if (fault === null) fold(folded, text(row, 'body'));
    else faults.push(fault);
  }
  if (seq !== head.seq || !sameBytes(before, head.hash)) {
    faults.push(`changes: the log ends at ${seq}, and ${head.seq} were written`);
  }
  return faults;
}

function rowFault(row: Row, seq: number, before: Uint8Array): string | null {
  const found = whole(row, 'seq');
  if (found !== seq) return `changes: ${seq} to ${found - 1} are missing`;
  const body = text(row, 'body');
  if (!sameBytes(bytes(row, 'hash'), chainHash(before, seq, body))) {
    return `change ${seq} (${text(row, 'id')}): its checksum does not match`;
  }
  return parseChange(body).id === text(row, 'id') ? null : `change ${seq}: its id was altered`;
}

function fold(folded: Map<string, StoredRecord>, body: string): void {
  const change = parseChange(body);
  const key = `${change.athlete} ${change.record}`;
  folded.set(key, applyChange(folded.get(key), change));
}

function recordFaults(db: DatabaseSync, records: RecordTable, folded: Map<string, StoredRecord>): string[] {
  const faults: string[] = [];
  for (const row of db.prepare('SELECT athlete, id FROM records ORDER BY athlete, id').all()) {
    const [athlete, id] = [text(row, 'athlete'), text(row, 'id')];
    const key = `${athlete} ${id}`;
    const expected = folded.get(key);
    folded.delete(key);
    if (
      expected === undefined ||
      canonicalText(() => records.get(athlete, id)) !== canonicalText(() => expected)
    ) {
      faults.push(`record ${id}: it differs from its changes`);
    }
  }
  for (const { id } of folded.values()) faults.push(`record ${id}: it is missing`);
  return faults;
}

/** Null for a record whose row can't be read at all. */
function canonicalText(read: () => StoredRecord | null): string | null {
  try {
    return canonicalJson({ ...read() });
  } catch {
    return null;
  }
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return Buffer.compare(a, b) === 0;
}
