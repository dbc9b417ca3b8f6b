import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { SCHEMA_VERSION } from '../store/migrations/migrations.ts';
import { checkedVersion } from '../store/sqlite-file.ts';
import { requireFile, unpackBackup } from '../store/sqlite-restore.ts';
import { explain } from '../store/sqlite-trouble.ts';
import { findFaults, whyUnreadable } from '../store/sqlite-verify.ts';
import { StoreTrouble } from '../store/trouble.ts';

/**
 * Faults of a backup, a line each. One of an older schema is looked at as a restore would bring it up, in a copy. Throws
 * StoreTrouble when there is no such file, or it is no store.
 */
export async function backupFaults(path: string): Promise<string[]> {
  requireFile(path);
  try {
    return isOlder(path) ? await faultsOnceUp(path) : await findFaults(path);
  } catch (error) {
    const known = explain(error, path);
    if (known instanceof StoreTrouble && known.code === 'damaged') return [known.what];
    throw known;
  }
}

function isOlder(path: string): boolean {
  const db = new DatabaseSync(path, { readOnly: true });
  try {
    return whyUnreadable(db, path) === null && checkedVersion(db, path) < SCHEMA_VERSION;
  } finally {
    db.close();
  }
}

async function faultsOnceUp(path: string): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-'));
  try {
    await unpackBackup(path, folder);
    return [];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
