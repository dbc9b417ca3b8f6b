import { DatabaseSync } from 'node:sqlite';
import type { Change } from '@platewright/core/changes/change.ts';
import { readChange } from './change-row.ts';
import { openDatabase } from './sqlite-file.ts';
import { CHANGES, changeLog } from './sqlite-log.ts';
import { recordTable } from './sqlite-records.ts';
import { StoreTrouble } from './trouble.ts';

/** Changes appended by one transaction. */
const CHANGES_AT_A_TIME = 1000;

/**
 * Appends to a store the changes of a damaged one that it lacks and that are still as they were written, as far as the
 * damaged file can be read. Returns how many.
 */
export function salvage(damaged: string, target: string): number {
  const db = openDatabase(target, 'owner');
  try {
    const log = changeLog(db, recordTable(db));
    const before = log.head().seq;
    let some: Change[] = [];
    const append = () => log.append(some, (clock) => clock);
    for (const change of soundChanges(damaged)) {
      some.push(change);
      if (some.length < CHANGES_AT_A_TIME) continue;
      append();
      some = [];
    }
    append();
    db.exec('PRAGMA journal_mode = DELETE');
    return log.head().seq - before;
  } finally {
    db.close();
  }
}

function* soundChanges(file: string): Generator<Change> {
  const db = new DatabaseSync(file, { readOnly: true });
  try {
    const foldedHash = db.prepare('SELECT folded_hash FROM head').get()?.folded_hash;
    const first = foldedHash instanceof Uint8Array ? Buffer.from(foldedHash).toString('hex') : '';
    for (const row of db.prepare(`${CHANGES} ORDER BY c.seq`).iterate()) {
      const change = soundChange(row, first);
      if (change !== null) yield change;
    }
  } catch (error) {
    // What can't be read any more has ended; a fault of this program has not.
    if (!(error instanceof Error && 'errcode' in error)) throw error;
  } finally {
    db.close();
  }
}

function soundChange(row: Parameters<typeof readChange>[0], foldedHash: string): Change | null {
  try {
    return readChange(row, foldedHash).change;
  } catch (error) {
    if (error instanceof StoreTrouble) return null;
    throw error;
  }
}
