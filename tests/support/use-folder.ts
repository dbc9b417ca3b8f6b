import { afterEach, beforeEach } from 'vitest';
import { temporaryFolder } from './folder.ts';

/** A new folder for each test of a file. */
export function useFolder(): () => string {
  let folder: ReturnType<typeof temporaryFolder>;
  beforeEach(() => {
    folder = temporaryFolder();
  });
  afterEach(() => folder.remove());
  return () => folder.path;
}
