import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { DatabaseSync, SQLInputValue } from 'node:sqlite';
import type { Pool } from 'pg';
import { CODE_COLUMNS } from './code-row.ts';
import { DEVICE_COLUMNS } from './device-row.ts';
import { flush } from './flush.ts';
import { HEAD_COLUMNS } from './head-row.ts';
import { reading } from './postgres-pool.ts';
import { rowSource } from './postgres-verify.ts';
import { RECORD_COLUMNS } from './record-row.ts';
import { damaged, type Row } from './rows.ts';
import { SETTING_COLUMNS } from './setting-row.ts';
import { openDatabase } from './sqlite-file.ts';
import { transaction } from './sqlite-transaction.ts';
import { findFaults } from './sqlite-verify.ts';
import { StoreTrouble } from './trouble.ts';

/** Tables with the columns that both engines have. */
const TABLES: readonly [string, string][] = [
  ['changes', 'seq, id, body, hash'],
  ['folded', 'id, seq, clock, checksum'],
  ['records', RECORD_COLUMNS],
  ['devices', DEVICE_COLUMNS],
  ['codes', CODE_COLUMNS],
  ['settings', SETTING_COLUMNS],
  ['head', `one, ${HEAD_COLUMNS}`],
];

/** Copies one state of a PostgreSQL store into a file that is a store itself; it appears when it is whole and sound. */
export async function copyToFile(pool: Pool, path: string): Promise<void> {
  if (existsSync(path)) throw new StoreTrouble('exists', `${path} is there already. Name a new file.`);
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const unfinished = `${path}.unfinished`;
  const remove = () => {
    for (const end of ['', '-wal', '-shm']) rmSync(`${unfinished}${end}`, { force: true });
  };
  remove();
  try {
    const db = openDatabase(unfinished, 'owner');
    try {
      await copyRows(pool, db);
      db.exec('PRAGMA journal_mode = DELETE');
    } finally {
      db.close();
    }
    const [fault] = await findFaults(unfinished, 'rows');
    if (fault !== undefined) throw damaged(fault);
    flush(unfinished);
    renameSync(unfinished, path);
    flush(dirname(path));
  } finally {
    remove();
  }
}

async function copyRows(pool: Pool, db: DatabaseSync): Promise<void> {
  db.exec('DELETE FROM head');
  await reading(pool, undefined, async (client) => {
    const source = rowSource(client);
    for (const [table, columns] of TABLES) {
      const names = columns.split(', ');
      const insert = db.prepare(
        `INSERT INTO ${table} (${columns}) VALUES (${names.map(() => '?').join(', ')})`,
      );
      for await (const some of portions(source.rows(`SELECT ${columns} FROM ${table}`))) {
        transaction(db, () => {
          for (const row of some) insert.run(...names.map((name) => plain(row[name])));
        });
      }
    }
  });
}

/** Rows in portions, each of which is one transaction. */
async function* portions(rows: AsyncIterable<Row>): AsyncGenerator<Row[]> {
  let some: Row[] = [];
  for await (const row of rows) {
    some.push(row);
    if (some.length < 5000) continue;
    yield some;
    some = [];
  }
  yield some;
}

function plain(value: unknown): SQLInputValue {
  if (value === null || typeof value === 'string' || typeof value === 'number') return value;
  if (value instanceof Uint8Array) return value;
  throw damaged('a column that can not be copied');
}
