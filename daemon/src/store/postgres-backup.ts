import { dirname } from 'node:path';
import type { DatabaseSync, SQLInputValue } from 'node:sqlite';
import type { Pool } from 'pg';
import { COPIED_TABLES, portions } from './copied-tables.ts';
import { reading } from './postgres-pool.ts';
import { rowSource } from './postgres-verify.ts';
import { damaged } from './rows.ts';
import { finishCopy, placeOfCopy, removeCopy } from './sqlite-copy.ts';
import { openDatabase } from './sqlite-file.ts';
import { transaction } from './sqlite-transaction.ts';
import { explainCopy } from './sqlite-trouble.ts';
import { findFaults } from './sqlite-verify.ts';

const LOG = { table: 'changes', columns: 'seq, id, body, hash' };
/** Rows written by one transaction. */
const ROWS_AT_A_TIME = 5000;

/** Copies one state of a PostgreSQL store into a file that is a store itself; it appears when it is whole and sound. */
export async function copyToFile(pool: Pool, path: string): Promise<void> {
  const unfinished = placeOfCopy(path);
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
    finishCopy(unfinished, path);
  } catch (error) {
    throw explainCopy(error, dirname(path));
  } finally {
    removeCopy(unfinished);
  }
}

async function copyRows(pool: Pool, db: DatabaseSync): Promise<void> {
  db.exec('DELETE FROM head');
  await reading(pool, undefined, async (client) => {
    const source = rowSource(client);
    for (const { table, columns } of [LOG, ...COPIED_TABLES]) {
      const names = columns.split(', ');
      const insert = db.prepare(
        `INSERT INTO ${table} (${columns}) VALUES (${names.map(() => '?').join(', ')})`,
      );
      for await (const some of portions(source.rows(`SELECT ${columns} FROM ${table}`), ROWS_AT_A_TIME)) {
        transaction(db, () => {
          for (const row of some) insert.run(...names.map((name) => plain(row[name])));
        });
      }
    }
  });
}

function plain(value: unknown): SQLInputValue {
  if (value === null || typeof value === 'string' || typeof value === 'number') return value;
  if (value instanceof Uint8Array) return value;
  throw damaged('a column that can not be copied');
}
