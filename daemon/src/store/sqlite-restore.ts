import {
  closeSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  openSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { flush } from './flush.ts';
import { damaged } from './rows.ts';
import { LOCK_FILE, STORE_FILE } from './sqlite.ts';
import { copyDatabase, removeCopy } from './sqlite-copy.ts';
import { checkedVersion, openDatabase } from './sqlite-file.ts';
import { takeLock } from './sqlite-lock.ts';
import { isOther, keepDevices, salvage } from './sqlite-salvage.ts';
import { settingTable } from './sqlite-settings.ts';
import { explain, explainCopy } from './sqlite-trouble.ts';
import { findFaults } from './sqlite-verify.ts';
import { StoreTrouble } from './trouble.ts';

/**
 * Makes a store of a backup in a folder that has none: brought up to this program's schema, checked, and under a new id,
 * so that devices notice and send again what it lacks. No pairing code of the backup is good any more. Throws
 * StoreTrouble, and leaves nothing behind, when the backup is not sound.
 */
export async function unpackBackup(backup: string, folder: string): Promise<void> {
  const target = join(folder, STORE_FILE);
  requireFile(backup);
  try {
    copyBackup(backup, target);
    const db = openDatabase(target, 'owner');
    try {
      const [fault] = await findFaults(target);
      if (fault !== undefined) throw damaged(fault);
      settingTable(db).renew();
      // One that waited then may have been used since.
      db.exec('DELETE FROM codes');
      db.exec('PRAGMA journal_mode = DELETE');
    } finally {
      db.close();
    }
  } catch (error) {
    removeCopy(target);
    const known = explain(error, folder);
    if (!(known instanceof StoreTrouble) || known.code !== 'damaged') throw known;
    throw new StoreTrouble('damaged', `${backup} is not sound (${known.what}). Try an older backup.`);
  }
}

/** Throws StoreTrouble when there is no file at the path, or none that this user may read. */
export function requireFile(path: string): void {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) throw new StoreTrouble('missing', `There is no file ${path}.`);
  if (!found.isFile())
    throw new StoreTrouble('not-a-store', `${path} is no file. Name a backup of Platewright.`);
  try {
    closeSync(openSync(path, 'r'));
  } catch {
    throw new StoreTrouble('unwritable', `${path} can't be read. Give it to this user.`);
  }
}

function copyBackup(backup: string, target: string): void {
  const source = new DatabaseSync(backup, { readOnly: true });
  try {
    if (checkedVersion(source, backup) === 0) {
      throw new StoreTrouble('not-a-store', `${backup} is empty. Name a backup of Platewright.`);
    }
    copyDatabase(source, target);
  } finally {
    source.close();
  }
}

/**
 * Puts the store of a backup in the place of a folder's own, which is kept beside it as `kept`. The daemon must be
 * stopped. When the old store is damaged, the new one is given what of it is sound and newer than the backup; returns how
 * many changes that were. Devices stay as they are in the old store, as far as they are sound. Of another store's old one
 * nothing is taken over but which keys were taken back. Whenever it is broken off, there is the old store or the new one.
 */
export async function replaceStore(backup: string, folder: string, kept: string): Promise<number> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const lock = takeLock(join(folder, LOCK_FILE));
  if (lock === null) {
    throw new StoreTrouble('in-use', `A daemon serves ${folder}. Stop it, then restore.`);
  }
  const unpacked = join(folder, 'restoring');
  try {
    rmSync(unpacked, { recursive: true, force: true });
    await unpackBackup(backup, unpacked);
    const [file, fresh] = [join(folder, STORE_FILE), join(unpacked, STORE_FILE)];
    const mayTake = existsSync(file) && !isOther(file, fresh);
    const taken = mayTake && (await isDamaged(file)) ? salvage(file, fresh) : 0;
    if (existsSync(file)) {
      keepDevices(file, fresh);
      setAside(file, kept);
    }
    flush(fresh);
    renameSync(fresh, file);
    flush(folder);
    return taken;
  } catch (error) {
    throw explain(error, folder);
  } finally {
    rmSync(unpacked, { recursive: true, force: true });
    lock.release();
  }
}

async function isDamaged(file: string): Promise<boolean> {
  return (await findFaults(file).catch(() => ['it can not be opened'])).length > 0;
}

/** Keeps a copy of a store that may be damaged, and leaves no log beside it that would be taken for the new one's. */
function setAside(file: string, kept: string): void {
  mergeLog(file);
  try {
    mkdirSync(dirname(kept), { recursive: true, mode: 0o700 });
    for (const end of ['', '-wal']) {
      if (!existsSync(`${file}${end}`)) continue;
      copyFileSync(`${file}${end}`, `${kept}${end}`);
      flush(`${kept}${end}`);
    }
    flush(dirname(kept));
  } catch (error) {
    removeCopy(kept);
    throw explainCopy(error, dirname(kept));
  }
  for (const end of ['-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
}

function mergeLog(file: string): void {
  try {
    const db = new DatabaseSync(file);
    try {
      db.exec('PRAGMA journal_mode = DELETE');
    } finally {
      db.close();
    }
  } catch {
    // Too damaged for that: file and log are kept as they are.
  }
}
