import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { copyDatabase } from './sqlite-copy.ts';
import { deviceTable } from './sqlite-devices.ts';
import { openDatabase } from './sqlite-file.ts';
import { takeLock } from './sqlite-lock.ts';
import { changeLog } from './sqlite-log.ts';
import { recordTable } from './sqlite-records.ts';
import { text } from './sqlite-rows.ts';
import { explain } from './sqlite-trouble.ts';
import { findFaults } from './sqlite-verify.ts';
import type { Store } from './store.ts';
import { StoreTrouble } from './trouble.ts';

export const STORE_FILE = 'store.sqlite';
const LOCK_FILE = 'store.lock';

/**
 * The store in a folder, made when it is not there. The owner holds it alone; a guest looks into one that a daemon may
 * be serving, and never appends. Throws StoreTrouble.
 */
export function openSqliteStore(folder: string, role: 'owner' | 'guest'): Store {
  return explained(folder, () => {
    const file = join(folder, STORE_FILE);
    if (role === 'owner') mkdirSync(folder, { recursive: true, mode: 0o700 });
    else if (!existsSync(file))
      throw new StoreTrouble('missing', `There is no store in ${folder} yet. Run platewright start.`);
    const lock = role === 'owner' ? takeLock(join(folder, LOCK_FILE)) : { release() {} };
    if (lock === null) {
      throw new StoreTrouble(
        'in-use',
        `Another Platewright serves ${folder}. Stop it, or name another data folder with --data.`,
      );
    }
    try {
      return storeOf(folder, openDatabase(file, role), lock);
    } catch (error) {
      lock.release();
      throw error;
    }
  });
}

/** Whether a process holds the store of a folder as its owner. */
export function isServed(folder: string): boolean {
  return explained(folder, () => {
    if (!existsSync(join(folder, LOCK_FILE))) return false;
    const lock = takeLock(join(folder, LOCK_FILE));
    lock?.release();
    return lock === null;
  });
}

function storeOf(folder: string, db: DatabaseSync, lock: { release(): void }): Store {
  const records = recordTable(db);
  const log = changeLog(db, records);
  const devices = deviceTable(db);
  const selectSetting = db.prepare('SELECT value FROM settings WHERE name = ?');
  const upsertSetting = db.prepare(
    'INSERT INTO settings VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
  );
  // A method may run only after the one before it: a promise here means a result, never a wait.
  const run = async <T>(work: () => T): Promise<T> => explained(folder, work);

  return {
    id: storeId(db),
    append: (changes, stamp) => run(() => log.append(changes, stamp)),
    changesSince: (seq, limit) => run(() => log.since(seq, limit)),
    records: (query) => run(() => records.find(query)),
    record: (athlete, id) => run(() => records.get(athlete, id)),
    mark: (seq) => run(() => log.mark(seq)),
    lastSeq: () => run(() => log.head().seq),
    latestClock: () => run(() => log.head().clock),
    devices: () => run(() => devices.all()),
    deviceByToken: (tokenHash) => run(() => devices.byToken(tokenHash)),
    putDevice: (device) => run(() => devices.put(device)),
    putCode: (hash, expiresAt, rights) => run(() => devices.putCode(hash, expiresAt, rights)),
    takeCode: (hash, now) => run(() => devices.takeCode(hash, now)),
    setting: (name) =>
      run(() => {
        const row = selectSetting.get(name);
        return row === undefined ? null : text(row, 'value');
      }),
    putSetting: (name, value) =>
      run(() => {
        upsertSetting.run(name, value);
      }),
    backup: (path) => run(() => copyDatabase(db, path)),
    verify: () => run(() => findFaults(db, log, records)),
    close: () =>
      run(() => {
        db.close();
        lock.release();
      }),
  };
}

function storeId(db: DatabaseSync): string {
  const select = db.prepare("SELECT value FROM settings WHERE name = 'store'");
  const row = select.get();
  if (row !== undefined) return text(row, 'value');
  const id = randomBytes(8).toString('hex');
  db.prepare("INSERT INTO settings VALUES ('store', ?)").run(id);
  return id;
}

function explained<T>(folder: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw explain(error, folder);
  }
}
