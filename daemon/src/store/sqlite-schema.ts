import { DatabaseSync } from 'node:sqlite';
import { addUp, checksum } from './checksum.ts';
import { migrations } from './migrations/migrations.ts';

/** `PLWR`, so that another program's database is not taken for a store (SQLite file format, offset 68). */
export const APPLICATION_ID = 0x504c5752;

/** Brings a store from a schema version to the newest, within the transaction that the caller has begun. */
export function migrate(db: DatabaseSync, from: number): void {
  addFunctions(db);
  for (const { version, sql } of migrations) {
    if (version > from) db.exec(`${sql}; PRAGMA user_version = ${version}`);
  }
  db.exec(`PRAGMA application_id = ${APPLICATION_ID}`);
}

/** Whether tables and indexes are those that the migrations make: a bit may flip in their description too. */
export function hasOwnSchema(db: DatabaseSync): boolean {
  return describe(db) === expected();
}

/** Made once, because each look at a store holds it against the same. */
let made: string | null = null;

function expected(): string {
  made ??= describeNew();
  return made;
}

function describeNew(): string {
  const model = new DatabaseSync(':memory:');
  try {
    migrate(model, 0);
    return describe(model);
  } finally {
    model.close();
  }
}

function describe(db: DatabaseSync): string {
  return JSON.stringify(
    db.prepare('SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY name').all(),
  );
}

function addFunctions(db: DatabaseSync): void {
  db.function('checksum', { varargs: true, deterministic: true }, (...columns) => checksum(...columns));
  db.aggregate('add_up', {
    start: () => new Uint8Array(16),
    step: (total, sum) => (sum instanceof Uint8Array ? addUp(asBytes(total), sum) : total),
  });
}

function asBytes(value: unknown): Uint8Array {
  return value instanceof Uint8Array ? value : new Uint8Array(16);
}
