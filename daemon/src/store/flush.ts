import { closeSync, fsyncSync, openSync } from 'node:fs';

/** Waits until a file, or the names in a folder, are on disk. */
export function flush(path: string): void {
  const file = openSync(path, 'r');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
