import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import type { PoolClient } from 'pg';
import { type ChangeRow, readChange } from './change-row.ts';
import { COPIED_TABLES, portions } from './copied-tables.ts';
import { readHead } from './head-row.ts';
import { insertChanges } from './postgres-log.ts';
import { openPool, writing } from './postgres-pool.ts';
import { columnsOf } from './postgres-records.ts';
import { demandBoundRole } from './postgres-role.ts';
import { migratePostgres } from './postgres-schema.ts';
import { explainPostgres } from './postgres-trouble.ts';
import { HEAD } from './row-check.ts';
import { whole } from './rows.ts';
import { STORE_FILE } from './sqlite.ts';
import { CHANGES } from './sqlite-log.ts';
import { unpackBackup } from './sqlite-restore.ts';
import { keepDevices } from './sqlite-salvage.ts';
import { StoreTrouble } from './trouble.ts';

/** Rows written by one statement. */
const ROWS_AT_A_TIME = 1000;
/** Columns that are not text; those named alike are of one type in all tables. */
const TYPES: Readonly<Record<string, string>> = {
  ...{ seq: 'bigint', folded_seq: 'bigint', one: 'integer', tries_left: 'integer' },
  ...{ paired_at: 'bigint', last_seen_at: 'bigint', revoked_at: 'bigint', expires_at: 'bigint' },
  ...{ checksum: 'bytea', folded_hash: 'bytea', records_sum: 'bytea' },
};

/**
 * Fills an empty PostgreSQL database from a backup, whole or not at all, under a new id, so that devices notice and send
 * again what it lacks. Devices stay as they are in a store of the folder `data`, from which it may have moved here. Throws
 * StoreTrouble.
 */
export async function fillDatabase(backup: string, address: string, data: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-restore-'));
  const pool = openPool(address);
  try {
    await unpackBackup(backup, folder);
    const moved = join(data, STORE_FILE);
    if (existsSync(moved)) keepDevices(moved, join(folder, STORE_FILE));
    const file = new DatabaseSync(join(folder, STORE_FILE), { readOnly: true });
    try {
      const client = await pool.connect();
      await begin(client).finally(() => client.release());
      await writing(pool, (writer) => copyAll(file, writer));
    } finally {
      file.close();
    }
  } catch (error) {
    throw explainPostgres(error);
  } finally {
    await pool.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function begin(client: PoolClient): Promise<void> {
  await demandBoundRole(client);
  await migratePostgres(client, 'owner');
}

async function copyAll(file: DatabaseSync, client: PoolClient): Promise<void> {
  const { rows } = await client.query('SELECT seq FROM head FOR UPDATE');
  if (rows[0] === undefined || whole(rows[0], 'seq') > 0) {
    throw new StoreTrouble('exists', 'This database has records already. Name an empty one with --store.');
  }
  for (const table of ['head', 'settings', 'devices', 'codes']) await client.query(`DELETE FROM ${table}`);
  const { foldedHash } = readHead(file.prepare(HEAD).get());
  let before = foldedHash;
  const log = file.prepare(`${CHANGES} ORDER BY c.seq`).iterate();
  for await (const some of portions(log, ROWS_AT_A_TIME)) {
    const changes: ChangeRow[] = some.map((row) => readChange(row, foldedHash));
    await insertChanges(client, before, changes);
    before = changes.at(-1)?.hash ?? before;
  }
  for (const { table, columns } of COPIED_TABLES) {
    const names = columns.split(', ');
    const types = names.map((name, i) => `$${i + 1}::${typeOf(table, name)}[]`);
    const all = file.prepare(`SELECT ${columns} FROM ${table}`).iterate();
    for await (const some of portions(all, ROWS_AT_A_TIME)) {
      const values = some.map((row) => names.map((name) => row[name]));
      await client.query(
        `INSERT INTO ${table} (${columns}) SELECT * FROM unnest(${types.join(', ')})`,
        columnsOf(values, names.length),
      );
    }
  }
}

/** The hash of a code is text, that of the log's end is not. */
function typeOf(table: string, column: string): string {
  if (column === 'hash') return table === 'head' ? 'bytea' : 'text';
  return TYPES[column] ?? 'text';
}
