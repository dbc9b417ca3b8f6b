import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { clockTime } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { photosInFile } from '../store/sqlite-photos.ts';
import type { BackedUp } from './backup.ts';
import { bytesFolder, dropBytes } from './bytes.ts';

/** A removal can be undone, and a file that was sent waits for its record (common practice, no source). */
const GRACE_MS = 86_400_000;

/**
 * Removes the files of photos that no record has named for a day, and those among the backups once no backup names them
 * either. A file in that folder that can't be read may be a backup that does, and then nothing there is removed.
 */
export async function dropPhotos({ store, data, backups }: BackedUp, nowMs: number): Promise<void> {
  const before = nowMs - GRACE_MS;
  const photos = await store.records({ kind: 'photo' });
  const named = new Set(photos.filter((photo) => !isGone(photo, before)).map(fileOf));
  dropBytes(bytesFolder(data), (name) => named.has(name), before);
  const kept = namedByBackups(backups);
  if (kept === null) return;
  dropBytes(bytesFolder(backups), (name) => named.has(name) || kept.has(name), before);
}

function isGone({ fields, clocks }: StoredRecord, before: number): boolean {
  return fields.removed === true && clocks.removed !== undefined && clockTime(clocks.removed) < before;
}

function fileOf({ fields }: StoredRecord): string {
  return String(fields.sha256 ?? '');
}

function namedByBackups(folder: string): Set<string> | null {
  try {
    const files = readdirSync(folder, { withFileTypes: true }).filter((item) => item.isFile());
    const photos = files.flatMap(({ name }) => photosInFile(join(folder, name)));
    return new Set(photos.filter(({ fields }) => fields.removed !== true).map(fileOf));
  } catch {
    return null;
  }
}
