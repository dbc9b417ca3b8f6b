import { DatabaseSync } from 'node:sqlite';
import type { Change } from '@platewright/core/changes/change.ts';
import { readChange } from './change-row.ts';
import { DEVICE_COLUMNS, readDevice } from './device-row.ts';
import { deviceTable } from './sqlite-devices.ts';
import { openDatabase } from './sqlite-file.ts';
import { CHANGES, changeLog } from './sqlite-log.ts';
import { recordTable } from './sqlite-records.ts';
import { settingTable } from './sqlite-settings.ts';
import type { StoredDevice } from './store.ts';
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

/**
 * Gives a restored store the devices of the one that is in its place, as far as they are sound: who was let go since the
 * backup is not let in again by it, and who was paired since goes on. Who was paired with another store is not let in.
 */
export function keepDevices(from: string, target: string): void {
  const isForeign = isOther(from, target);
  const db = openDatabase(target, 'owner');
  try {
    const { put } = deviceTable(db);
    for (const device of soundDevices(from)) if (!isForeign || device.revokedAt !== null) put(device);
    db.exec('PRAGMA journal_mode = DELETE');
  } finally {
    db.close();
  }
}

/** Whether two files are known to be different stores, and not two states of one. */
export function isOther(file: string, than: string): boolean {
  const [one, other] = [originIn(file), originIn(than)];
  return one !== null && other !== null && one !== other;
}

function originIn(file: string): string | null {
  const [origin = null] = readable(file, function* (db) {
    yield sound(() => settingTable(db).origin());
  });
  return origin;
}

function soundChanges(file: string): Generator<Change> {
  return readable(file, function* (db) {
    const foldedHash = db.prepare('SELECT folded_hash FROM head').get()?.folded_hash;
    const first = foldedHash instanceof Uint8Array ? Buffer.from(foldedHash).toString('hex') : '';
    for (const row of db.prepare(`${CHANGES} ORDER BY c.seq`).iterate()) {
      const change = sound(() => readChange(row, first).change);
      if (change !== null) yield change;
    }
  });
}

function soundDevices(file: string): Generator<StoredDevice> {
  return readable(file, function* (db) {
    for (const row of db.prepare(`SELECT ${DEVICE_COLUMNS} FROM devices`).iterate()) {
      const device = sound(() => readDevice(row));
      if (device !== null) yield device;
    }
  });
}

/** What can be read of a file that may be damaged. */
function* readable<T>(file: string, read: (db: DatabaseSync) => Generator<T>): Generator<T> {
  const db = new DatabaseSync(file, { readOnly: true });
  try {
    yield* read(db);
  } catch (error) {
    // What can't be read any more has ended; a fault of this program has not.
    if (!(error instanceof Error && 'errcode' in error)) throw error;
  } finally {
    db.close();
  }
}

function sound<T>(read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    if (error instanceof StoreTrouble) return null;
    throw error;
  }
}
