import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const MEMORY = '/dev/shm';

/** A folder that is soon gone, in memory where that can be: these histories are of what is kept, not of the disk. */
export function scratchFolder(): { path: string; remove(): void } {
  const path = mkdtempSync(join(existsSync(MEMORY) ? MEMORY : tmpdir(), 'platewright-history-'));
  return { path, remove: () => rmSync(path, { recursive: true }) };
}
