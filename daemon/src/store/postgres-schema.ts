import type { PoolClient } from 'pg';
import { checksum } from './checksum.ts';
import { headValues } from './head-row.ts';
import { whole } from './rows.ts';
import { StoreTrouble } from './trouble.ts';

/** Held while the tables are brought up to date, so that two daemons that start at once do not both do it. */
const MIGRATION_LOCK = 0x504c5752;

/**
 * Forward only, in order; a released one is never changed. The same rows as in a file, and `before` in the log, the hash
 * of the row before, which may be of an athlete who is not to be seen. Rows of athletes are seen and written only under
 * `platewright.athlete`: the id of one of them, or `*` for all.
 */
const migrations: readonly string[] = [
  `
  CREATE TABLE changes (
    seq bigint PRIMARY KEY,
    id text COLLATE "C" NOT NULL UNIQUE,
    athlete text COLLATE "C" NOT NULL,
    body text NOT NULL,
    hash bytea NOT NULL,
    before bytea NOT NULL
  );
  CREATE INDEX changes_by_athlete ON changes (athlete, seq);
  CREATE TABLE folded (
    id text COLLATE "C" PRIMARY KEY,
    seq bigint NOT NULL,
    clock text NOT NULL,
    checksum bytea NOT NULL
  );
  CREATE TABLE head (
    one integer PRIMARY KEY CHECK (one = 1),
    seq bigint NOT NULL,
    hash bytea NOT NULL,
    clock text,
    folded_seq bigint NOT NULL,
    folded_hash bytea NOT NULL,
    records_sum bytea NOT NULL,
    checksum bytea NOT NULL
  );
  CREATE TABLE records (
    athlete text COLLATE "C" NOT NULL,
    id text COLLATE "C" NOT NULL,
    kind text COLLATE "C" NOT NULL,
    date text COLLATE "C",
    fields text NOT NULL,
    clocks text NOT NULL,
    checksum bytea NOT NULL,
    PRIMARY KEY (athlete, id)
  );
  CREATE INDEX records_by_kind ON records (kind, athlete, date);
  CREATE TABLE devices (
    id text COLLATE "C" PRIMARY KEY,
    name text NOT NULL,
    kind text NOT NULL,
    origin text,
    token_hash text NOT NULL UNIQUE,
    paired_at bigint NOT NULL,
    last_seen_at bigint,
    revoked_at bigint,
    athlete text,
    access text NOT NULL,
    checksum bytea NOT NULL
  );
  CREATE TABLE codes (
    hash text PRIMARY KEY,
    expires_at bigint NOT NULL,
    tries_left integer NOT NULL,
    athlete text,
    access text NOT NULL,
    checksum bytea NOT NULL
  );
  CREATE TABLE settings (name text PRIMARY KEY, value text NOT NULL, checksum bytea NOT NULL);
  ALTER TABLE changes ENABLE ROW LEVEL SECURITY;
  ALTER TABLE changes FORCE ROW LEVEL SECURITY;
  ALTER TABLE records ENABLE ROW LEVEL SECURITY;
  ALTER TABLE records FORCE ROW LEVEL SECURITY;
  CREATE POLICY own_rows ON changes
    USING ((SELECT current_setting('platewright.athlete', true)) IN ('*', athlete));
  CREATE POLICY own_rows ON records
    USING ((SELECT current_setting('platewright.athlete', true)) IN ('*', athlete));
  `,
];

/** Makes the tables, or brings them up to date, whole or not at all; a guest only looks whether they are. */
export async function migratePostgres(client: PoolClient, role: 'owner' | 'guest'): Promise<void> {
  await client.query('BEGIN');
  try {
    await client.query('SELECT pg_advisory_xact_lock($1)', [MIGRATION_LOCK]);
    const version = await schemaVersion(client);
    if (version > migrations.length) throw newer(version);
    if (version < migrations.length && role === 'guest') throw unfit(version);
    if (version === 0 && role === 'owner') await begin(client);
    for (const sql of migrations.slice(version)) await client.query(sql);
    if (version === 0 && role === 'owner') await insertHead(client);
    if (version < migrations.length) {
      await client.query('UPDATE schema_version SET version = $1', [migrations.length]);
    }
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  }
}

async function schemaVersion(client: PoolClient): Promise<number> {
  const found = await client.query("SELECT to_regclass('platewright.schema_version') IS NOT NULL AS there");
  if (found.rows[0]?.there !== true) return 0;
  const { rows } = await client.query('SELECT version FROM schema_version');
  return whole(rows[0], 'version');
}

async function begin(client: PoolClient): Promise<void> {
  await client.query(`CREATE SCHEMA IF NOT EXISTS platewright;
    CREATE TABLE schema_version (version integer NOT NULL);
    INSERT INTO schema_version VALUES (0)`);
}

async function insertHead(client: PoolClient): Promise<void> {
  const none = '00'.repeat(32);
  const recordsSum = Buffer.alloc(checksum().length);
  const head = { seq: 0, hash: none, clock: null, foldedSeq: 0, foldedHash: none, recordsSum };
  await client.query('INSERT INTO head VALUES (1, $1, $2, $3, $4, $5, $6, $7)', [...headValues(head)]);
}

function newer(version: number): StoreTrouble {
  return new StoreTrouble(
    'newer',
    `The database was written by a newer Platewright (schema ${version}; this one knows ${migrations.length}). Update Platewright; the database was not touched.`,
  );
}

function unfit(version: number): StoreTrouble {
  return version === 0
    ? new StoreTrouble(
        'missing',
        (options) => `There is no store in this database yet. Run npx platewright start${options}.`,
      )
    : new StoreTrouble('older', 'The database has an older schema. Restart the daemon once, then try again.');
}
