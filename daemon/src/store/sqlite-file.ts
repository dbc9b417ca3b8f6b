import { renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { SCHEMA_VERSION } from './migrations/migrations.ts';
import { damaged } from './rows.ts';
import { copyDatabase } from './sqlite-copy.ts';
import { APPLICATION_ID, hasOwnSchema, migrate } from './sqlite-schema.ts';
import { transaction } from './sqlite-transaction.ts';
import { StoreTrouble } from './trouble.ts';

/** Before it a commit could be lost with two connections in WAL mode (SQLite's WAL-reset fault, 3.7.0 to 3.51.2). */
const OLDEST_SQLITE = [3, 51, 3] as const;

/** The pages of a long push fit in, so that none is written before its end, and then again. */
const CACHE_KIB = 4000;

/** How long a writer waits for another process to finish, ms. */
const BUSY_MS = 5000;

/** Throws when this SQLite version can lose a commit. */
export function requireSqlite(version: string): void {
  const parts = version.split('.').map(Number);
  for (const [i, least] of OLDEST_SQLITE.entries()) {
    const part = parts[i] ?? 0;
    if (part > least) return;
    if (part < least) {
      throw new StoreTrouble(
        'old-sqlite',
        `This Node brings SQLite ${version}, which can lose a saved change. Use a Node with SQLite ${OLDEST_SQLITE.join('.')} or newer.`,
      );
    }
  }
}

/**
 * The database at `path` of this program's schema. The owner makes it, or migrates it after a backup; a guest never does.
 * A newer or foreign one is left untouched. Throws StoreTrouble.
 */
export function openDatabase(path: string, role: 'owner' | 'guest'): DatabaseSync {
  requireSqlite(process.versions.sqlite ?? '0');
  const db = new DatabaseSync(path, { timeout: BUSY_MS });
  try {
    const version = checkedVersion(db, path);
    if (version < SCHEMA_VERSION && role === 'guest') {
      throw new StoreTrouble(
        'older',
        `${path} has an older schema. Restart the daemon once, then try again.`,
      );
    }
    db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF');
    db.exec(`PRAGMA cache_size = -${CACHE_KIB}`);
    if (version < SCHEMA_VERSION) bringUp(db, path, version);
    if (!hasOwnSchema(db)) throw damaged('its tables are not as they were made');
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** The schema version of a store; 0 for an empty file. Throws when the file is no store, or one that is too new. */
export function checkedVersion(db: DatabaseSync, path: string): number {
  const version = Number(db.prepare('PRAGMA user_version').get()?.user_version);
  const empty = Number(db.prepare('SELECT count(*) AS n FROM sqlite_schema').get()?.n) === 0;
  const own = Number(db.prepare('PRAGMA application_id').get()?.application_id) === APPLICATION_ID;
  if (!own && !(empty && version === 0)) {
    throw new StoreTrouble(
      'not-a-store',
      `${path} is a database of another program. Name another data folder with --data.`,
    );
  }
  if (version < 0 || (version === 0) !== empty) throw damaged('its schema version is not as it was written');
  if (version > SCHEMA_VERSION) {
    throw new StoreTrouble(
      'newer',
      `${path} was written by a newer Platewright (schema ${version}; this one knows ${SCHEMA_VERSION}). Update Platewright; the store was not touched.`,
    );
  }
  return version;
}

/** Migrates whole or not at all, a store with content only after it was copied beside itself. */
function bringUp(db: DatabaseSync, path: string, version: number): void {
  if (version > 0) copyBefore(db, path);
  transaction(db, () => migrate(db, version));
}

/** A copy of an earlier try, which may have been of another store, gives way when the new one is whole. */
function copyBefore(db: DatabaseSync, path: string): void {
  const copy = join(dirname(path), 'backups', `before-schema-${SCHEMA_VERSION}.sqlite`);
  rmSync(`${copy}.new`, { force: true });
  copyDatabase(db, `${copy}.new`);
  renameSync(`${copy}.new`, copy);
}
