import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A place for stores and settings that is gone after the test. */
export function temporaryFolder(): { path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), 'platewright-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
