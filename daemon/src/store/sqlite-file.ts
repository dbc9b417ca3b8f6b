import { DatabaseSync } from 'node:sqlite';
import { migrations, SCHEMA_VERSION } from './migrations/migrations.ts';
import { transaction } from './sqlite-rows.ts';
import { StoreTrouble } from './trouble.ts';

/** `PLWR`, so that another program's database is not taken for a store (SQLite file format, offset 68). */
const APPLICATION_ID = 0x504c5752;

/** Before it a commit could be lost with two connections in WAL mode (SQLite's WAL-reset fault, 3.7.0 to 3.51.2). */
const OLDEST_SQLITE = [3, 51, 3] as const;

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
 * The database at `path` of this program's schema. The owner makes or migrates it; a guest never does. A newer or
 * foreign one is left untouched.
 */
export function openDatabase(path: string, role: 'owner' | 'guest'): DatabaseSync {
  requireSqlite(process.versions.sqlite ?? '0');
  const db = new DatabaseSync(path, { timeout: BUSY_MS });
  try {
    const version = schemaVersion(db);
    const empty = Number(db.prepare('SELECT count(*) AS n FROM sqlite_schema').get()?.n) === 0;
    const foreign = Number(db.prepare('PRAGMA application_id').get()?.application_id) !== APPLICATION_ID;
    if (foreign && !(empty && version === 0)) {
      throw new StoreTrouble(
        'not-a-store',
        `${path} is a database of another program. Name another data folder with --data.`,
      );
    }
    if (version > SCHEMA_VERSION) {
      throw new StoreTrouble(
        'newer',
        `${path} was written by a newer Platewright (schema ${version}; this one knows ${SCHEMA_VERSION}). Update Platewright; the store was not touched.`,
      );
    }
    if (version < SCHEMA_VERSION && role === 'guest') {
      throw new StoreTrouble(
        'older',
        `${path} has an older schema. Restart the daemon once, then try again.`,
      );
    }
    db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF');
    if (version < SCHEMA_VERSION) migrate(db, version);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

function schemaVersion(db: DatabaseSync): number {
  return Number(db.prepare('PRAGMA user_version').get()?.user_version);
}

function migrate(db: DatabaseSync, from: number): void {
  transaction(db, () => {
    for (const { version, sql } of migrations) if (version > from) db.exec(sql);
    db.exec(`PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${SCHEMA_VERSION}`);
  });
}
