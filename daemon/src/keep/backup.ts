import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ORIGIN_SETTING } from '../store/setting-row.ts';
import type { Store } from '../store/store.ts';
import { bytesFolder, copyBytes } from './bytes.ts';
import { rotate } from './rotation.ts';

/** A backup that was made by the daemon or by hand, but not one that a person has named. */
export interface Backup {
  path: string;
  /** When it was made, ms since 1970, by its name. */
  at: number;
  /** Whose it is, by its name, see originOf; null when the name does not say. */
  origin: string | null;
}

/** No backup takes so long, ms (common practice, no source). */
const LONGEST_MS = 86_400_000;

const UNFINISHED = /^platewright-.*\.sqlite\.unfinished(-wal|-shm)?$/;
const NAME = /^platewright-(?:(\w+)-)?(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)Z\.sqlite$/;

/** Where backups go unless another folder is named. */
export function backupFolder(dataFolder: string): string {
  return join(dataFolder, 'backups');
}

/** What a store is called through all restores, which each give it another id. */
export async function originOf(store: Store): Promise<string> {
  return (await store.setting(ORIGIN_SETTING)) ?? store.id;
}

/** Where a backup of this instant goes unless told otherwise. */
export function backupPath(folder: string, origin: string, nowMs: number): string {
  return join(folder, `platewright-${origin}-${stampOf(nowMs)}.sqlite`);
}

/** An instant as names of files have it, in UTC. */
export function stampOf(nowMs: number): string {
  return `${new Date(nowMs).toISOString().slice(0, 19).replaceAll(':', '-')}Z`;
}

/**
 * Backups in a folder, newest first; none when there is no folder. Those of other stores than `origin` are left out, unless
 * it is null. Those from the future come last: they were made under a wrong clock, and how old they are is not known.
 */
export function listBackups(folder: string, nowMs: number, origin: string | null): Backup[] {
  return names(folder)
    .flatMap((name) => {
      const [, of = null, date, hour, minute, second] = NAME.exec(name) ?? [];
      const at = Date.parse(`${date}T${hour}:${minute}:${second}Z`);
      return Number.isNaN(at) ? [] : [{ path: join(folder, name), at, origin: of }];
    })
    .filter((backup) => origin === null || backup.origin === null || backup.origin === origin)
    .sort((a, b) => Number(a.at > nowMs) - Number(b.at > nowMs) || b.at - a.at);
}

/** A store, the folder of the files beside it, and the folder of its backups. */
export interface BackedUp {
  store: Store;
  data: string;
  backups: string;
}

/**
 * Makes a backup of a store and of the files beside it, and lets go of those that the rotation no longer keeps. Files are
 * named by their content, so all backups of a folder share them. Returns the path.
 */
export async function makeBackup({ store, data, backups: folder }: BackedUp, nowMs: number): Promise<string> {
  const origin = await originOf(store);
  const path = backupPath(folder, origin, nowMs);
  clearUnfinished(folder, nowMs - LONGEST_MS);
  await store.backup(path);
  // Those from the future would take the places of all others; their turn comes with their time.
  const past = listBackups(folder, nowMs, origin).filter(({ at }) => at <= nowMs);
  const kept = rotate(past.map(({ at }) => at));
  for (const backup of past)
    if (!kept.has(backup.at) && backup.path !== path) rmSync(backup.path, { force: true });
  // Last, because a photo that can't be copied is no reason to let backups pile up.
  await copyBytes(bytesFolder(data), bytesFolder(folder));
  return path;
}

/** What a kill in the middle of a backup left is as large as the store, and no name leads to it any more. */
function clearUnfinished(folder: string, before: number): void {
  const unfinished = names(folder).filter((name) => UNFINISHED.test(name));
  for (const path of unfinished.map((name) => join(folder, name))) {
    const found = statSync(path, { throwIfNoEntry: false });
    if (found !== undefined && found.mtimeMs < before) rmSync(path, { force: true });
  }
}

function names(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
