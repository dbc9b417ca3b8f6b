import { DatabaseSync } from 'node:sqlite';

/**
 * Takes the lock file at `path` for this process, or returns null when another one holds it. The lock is SQLite's own,
 * which the system lets go of however the process ends.
 */
export function takeLock(path: string): { release(): void } | null {
  const lock = new DatabaseSync(path, { timeout: 0 });
  try {
    lock.exec('PRAGMA journal_mode = MEMORY; BEGIN EXCLUSIVE');
  } catch (error) {
    lock.close();
    if (isBusy(error)) return null;
    throw error;
  }
  return { release: () => lock.close() };
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && 'errcode' in error && (Number(error.errcode) & 0xff) === 5;
}
