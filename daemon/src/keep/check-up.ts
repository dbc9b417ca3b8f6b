import { accessSync, constants, existsSync, statfsSync, statSync } from 'node:fs';
import { clockTime, MAX_AHEAD_MS } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { openStore, type StorePlace } from '../store/open.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { listBackups, originOf } from './backup.ts';
import { bytesFolder } from './bytes.ts';
import { photoAdvice, photoFaults } from './photo-check.ts';

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

/** A store with the folder of its backups, and the options that lead a command to it. */
interface CheckedPlace extends StorePlace {
  backups: string;
  options: string;
}

/** Looks at a data folder, its store and the folder of its backups without changing anything. */
export async function checkUp(place: CheckedPlace, nowMs: number): Promise<Finding[]> {
  const { data, options } = place;
  const access = folderFinding(data, options);
  if (access.mend !== null) return [access];
  return [access, privacyFinding(data), spaceFinding(data), ...(await storeFindings(place, nowMs))];
}

function folderFinding(folder: string, options: string): Finding {
  const about = 'folder';
  if (!existsSync(folder)) {
    const mend = `Run npx platewright start${options}, or name another folder with --data.`;
    return { about, state: `${folder} is not there`, mend };
  }
  try {
    accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK);
    return { about, state: folder, mend: null };
  } catch {
    const mend = 'Give it to this user, or name another folder with --data.';
    return { about, state: `${folder} is no folder that can be read and written`, mend };
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

async function storeFindings(place: CheckedPlace, nowMs: number): Promise<Finding[]> {
  const about = 'store';
  try {
    const store = await openStore(place, 'guest');
    try {
      const faults = await store.verify();
      const state = faults.length === 0 ? `${await store.lastSeq()} changes, all sound` : faults.join('; ');
      const mend =
        faults.length === 0
          ? null
          : `Run npx platewright verify${place.options}: it says which backup to go back to.`;
      // Where rows are not sound, records can't be read.
      const photos = faults.length === 0 ? await store.records({ kind: 'photo' }) : [];
      const files = bytesFolder(place.data);
      return [
        { about, state, mend },
        photoFinding(photos, files),
        clockFinding(await store.latestClock(), nowMs),
        backupFinding(place, nowMs, await originOf(store)),
      ];
    } finally {
      await store.close();
    }
  } catch (error) {
    if (!(error instanceof StoreTrouble)) throw error;
    return [
      { about, state: 'it can not be opened', mend: error.messageWith(place.options) },
      backupFinding(place, nowMs, null),
    ];
  }
}

function photoFinding(photos: readonly StoredRecord[], folder: string): Finding {
  const about = 'photos';
  const faults = photoFaults(photos, folder);
  if (faults.length > 0) return { about, state: faults.join('; '), mend: photoAdvice(folder) };
  const shown = photos.filter(({ fields }) => fields.removed !== true).length;
  return { about, state: shown === 0 ? 'none' : `${shown}, all sound`, mend: null };
}

/** The daemon takes no clock that is further ahead than MAX_AHEAD_MS, so a later one was written under another time. */
function clockFinding(latest: string | null, nowMs: number): Finding {
  const about = 'clock';
  const now = new Date(nowMs).toISOString();
  const behindMs = latest === null ? 0 : clockTime(latest) - nowMs - MAX_AHEAD_MS;
  if (behindMs <= 0) return { about, state: now, mend: null };
  return {
    about,
    state: `it says ${now}, but changes were stored at ${new Date(nowMs + behindMs).toISOString()}`,
    mend: 'Let the machine set its clock by the network; nothing is refused until then. Where it is right now, it was ahead before, and edits may sort oddly until that time.',
  };
}

function backupFinding({ backups, options }: CheckedPlace, nowMs: number, origin: string | null): Finding {
  const about = 'backup';
  const [newest] = listBackups(backups, nowMs, origin);
  if (newest !== undefined && newest.at <= nowMs && nowMs - newest.at <= OLDEST_BACKUP_MS) {
    return { about, state: new Date(newest.at).toISOString(), mend: null };
  }
  const state =
    newest === undefined ? 'there is none' : `the last one is of ${new Date(newest.at).toISOString()}`;
  return { about, state, mend: `Run npx platewright backup${options}, and keep a copy on another disk.` };
}
