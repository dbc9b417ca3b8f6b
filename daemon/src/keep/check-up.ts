import { accessSync, constants, readdirSync, statfsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openSqliteStore } from '../store/sqlite.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { backupFolder } from './backup.ts';

/** What was looked at, how it stands, and the mend when it does not stand well. */
export interface Finding {
  about: string;
  state: string;
  mend: string | null;
}

/** Room for a backup of ten years and the log beside it (common practice, no source). */
const LEAST_FREE_BYTES = 500 * 1024 * 1024;
/** A week of entries is what most people can type again from memory (common practice, no source). */
const OLDEST_BACKUP_MS = 7 * 86_400_000;

/** Looks at a data folder and its store without changing anything. */
export async function checkUp(folder: string, nowMs: number): Promise<Finding[]> {
  const access = folderFinding(folder);
  if (access.mend !== null) return [access];
  return [
    access,
    privacyFinding(folder),
    spaceFinding(folder),
    ...(await storeFindings(folder)),
    backupFinding(folder, nowMs),
  ];
}

function folderFinding(folder: string): Finding {
  const about = 'folder';
  try {
    accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK);
    return { about, state: folder, mend: null };
  } catch {
    return {
      about,
      state: `${folder} is not there, or can't be written`,
      mend: 'Run platewright start, or name another folder with --data.',
    };
  }
}

function privacyFinding(folder: string): Finding {
  const about = 'permissions';
  const open = process.platform !== 'win32' && (statSync(folder).mode & 0o077) !== 0;
  return open
    ? { about, state: 'other users can look into the folder', mend: `chmod 700 '${folder}'` }
    : { about, state: 'this user only', mend: null };
}

function spaceFinding(folder: string): Finding {
  const { bavail, bsize } = statfsSync(folder);
  const state = `${Math.round((bavail * bsize) / 1024 ** 2)} MiB free`;
  return { about: 'disk', state, mend: bavail * bsize < LEAST_FREE_BYTES ? 'Free some space.' : null };
}

async function storeFindings(folder: string): Promise<Finding[]> {
  const about = 'store';
  try {
    const store = openSqliteStore(folder, 'guest');
    try {
      const faults = await store.verify();
      const state = faults.length === 0 ? `${await store.lastSeq()} changes, all sound` : faults.join('; ');
      return [
        { about, state, mend: faults.length === 0 ? null : 'Stop the daemon and go back to a backup.' },
      ];
    } finally {
      await store.close();
    }
  } catch (error) {
    if (!(error instanceof StoreTrouble)) throw error;
    return [{ about, state: 'it can not be opened', mend: error.message }];
  }
}

function backupFinding(folder: string, nowMs: number): Finding {
  const about = 'backup';
  const newest = Math.max(...backupTimes(backupFolder(folder)));
  if (nowMs - newest <= OLDEST_BACKUP_MS) return { about, state: new Date(newest).toISOString(), mend: null };
  const state = Number.isFinite(newest)
    ? `the last one is of ${new Date(newest).toISOString()}`
    : 'there is none';
  return { about, state, mend: 'Run platewright backup, and keep a copy on another disk.' };
}

function backupTimes(folder: string): number[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.sqlite'))
      .map((name) => statSync(join(folder, name)).mtimeMs);
  } catch {
    return [];
  }
}
