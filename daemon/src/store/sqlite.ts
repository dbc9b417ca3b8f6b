import { existsSync, mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { DatabaseSync } from 'node:sqlite';
import { createGuard } from './guard.ts';
import { damaged } from './rows.ts';
import { copySound } from './sqlite-copy.ts';
import { deviceTable } from './sqlite-devices.ts';
import { openDatabase } from './sqlite-file.ts';
import { takeLock } from './sqlite-lock.ts';
import { changeLog } from './sqlite-log.ts';
import { recordTable } from './sqlite-records.ts';
import { settingTable } from './sqlite-settings.ts';
import { settleWhenQuiet } from './sqlite-settle.ts';
import { explain, moved } from './sqlite-trouble.ts';
import { findFaults, startFaults } from './sqlite-verify.ts';
import type { Store } from './store.ts';
import { StoreTrouble } from './trouble.ts';

export const STORE_FILE = 'store.sqlite';
export const LOCK_FILE = 'store.lock';

/**
 * The store in a folder, made when it is not there. The owner holds it alone; a guest looks into one that a daemon may
 * be serving, and never appends. Throws StoreTrouble.
 */
export function openSqliteStore(folder: string, role: 'owner' | 'guest'): Store {
  return explained(folder, () => {
    const file = join(folder, STORE_FILE);
    if (role === 'owner') mkdirSync(folder, { recursive: true, mode: 0o700 });
    else if (!existsSync(file))
      throw new StoreTrouble(
        'missing',
        (options) => `There is no store in ${folder} yet. Run npx platewright start${options}.`,
      );
    const lock = role === 'owner' ? takeLock(join(folder, LOCK_FILE)) : { release() {} };
    if (lock === null) {
      throw new StoreTrouble(
        'in-use',
        `Another Platewright serves ${folder}. Stop it, or name another data folder with --data.`,
      );
    }
    try {
      return storeOf(folder, openDatabase(file, role), role, lock);
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

function storeOf(
  folder: string,
  db: DatabaseSync,
  role: 'owner' | 'guest',
  lock: { release(): void },
): Store {
  const records = recordTable(db);
  const log = changeLog(db, records);
  const devices = deviceTable(db);
  const settings = settingTable(db);
  const settling = settleWhenQuiet(db);
  const file = join(folder, STORE_FILE);
  // A method may run only after the one before it: a promise here means a result, never a wait.
  const guard = createGuard((error) => explain(error, folder));
  const { read, trouble, close } = guard;
  const inPlace = watchPlace(file);
  const write = <T>(work: () => T | Promise<T>): Promise<T> =>
    guard.write(() => {
      if (!inPlace()) throw moved(folder);
      return work();
    });
  const [fault] = role === 'owner' ? startFaults(db) : [];
  if (fault !== undefined) close(damaged(fault));
  return {
    id: settings.id(),
    trouble,
    append: (changes, stamp) =>
      write(() => {
        settling.written();
        return log.append(changes, stamp);
      }),
    changesSince: (seq, limit, athlete) => read(() => log.since(seq, limit, athlete)),
    snapshot: (after, limit, athlete) =>
      read(() => ({ seq: log.head().seq, records: records.page(after, limit, athlete) })),
    fold: (seq) => write(() => log.fold(seq)),
    records: (query) => read(() => records.find(query)),
    record: (athlete, id) => read(() => records.get(athlete, id)),
    mark: (seq) => read(() => log.mark(seq)),
    lastSeq: () => read(() => log.lastSeq()),
    latestClock: () => read(() => log.head().clock),
    devices: () => read(() => devices.all()),
    deviceByToken: (tokenHash) => read(() => devices.byToken(tokenHash)),
    putDevice: (device) => write(() => devices.put(device)),
    putCode: (hash, expiresAt, rights) => write(() => devices.putCode(hash, expiresAt, rights)),
    waitingCodes: (now) => read(() => devices.waitingCodes(now)),
    takeCode: (hash, now) => write(() => devices.takeCode(hash, now)),
    setting: (name) => read(() => settings.get(name)),
    putSetting: (name, value) => write(() => settings.put(name, value)),
    backup: (path) => write(() => copySound(db, path, (copy) => findFaults(copy, 'rows'))),
    verify: () => read(() => findFaults(file)),
    close: () =>
      read(() => {
        settling.stop();
        db.close();
        lock.release();
      }),
  };
}

/** Tells whether the file of a store is still the one that was opened: what is written into another one is lost at the end. */
function watchPlace(file: string): () => boolean {
  const opened = statSync(file, { bigint: true });
  return () => {
    const now = statSync(file, { bigint: true, throwIfNoEntry: false });
    return now?.ino === opened.ino && now.dev === opened.dev;
  };
}

function explained<T>(folder: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw explain(error, folder);
  }
}
