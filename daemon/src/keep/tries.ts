import { randomUUID } from 'node:crypto';
import { existsSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { isServed } from '../store/sqlite.ts';

/** One that is just being unpacked is not served yet (common practice, no source). */
const UNPACKING_MS = 3_600_000;

/** A folder for the copy of a backup that is looked at, beside the store of `data`. */
export function newTry(data: string): string {
  return join(folderOf(data), randomUUID());
}

/** Removes copies that were left because their process was killed, or its terminal closed: nothing of a try is kept. */
export function dropTries(data: string, nowMs: number): void {
  if (!existsSync(folderOf(data))) return;
  try {
    for (const name of readdirSync(folderOf(data))) {
      const folder = join(folderOf(data), name);
      if (nowMs - statSync(folder).mtimeMs > UNPACKING_MS && !isServed(folder))
        rmSync(folder, { recursive: true, force: true });
    }
  } catch {
    // One that this user may not remove is no reason not to start.
  }
}

function folderOf(data: string): string {
  return join(data, 'tries');
}
