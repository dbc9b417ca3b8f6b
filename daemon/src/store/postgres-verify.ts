import type { Pool, PoolClient } from 'pg';
import { reading } from './postgres-pool.ts';
import { type RowSource, rowFaults } from './row-check.ts';
import type { Row } from './rows.ts';

/** Rows fetched at a time. */
const ROWS_AT_A_TIME = 1000;

/** Faults of the rows of a PostgreSQL store, a line each; its files are PostgreSQL's own to check. */
export function postgresFaults(pool: Pool): Promise<string[]> {
  return reading(pool, undefined, (client) => rowFaults(rowSource(client), 'changes'));
}

/** The rows of a PostgreSQL store within a transaction, some at a time. */
export function rowSource(client: PoolClient): RowSource {
  return {
    changes: 'SELECT seq, id, body, hash, before FROM changes ORDER BY seq',
    async *rows(sql: string): AsyncGenerator<Row> {
      await client.query(`DECLARE all_rows NO SCROLL CURSOR FOR ${sql}`);
      try {
        for (;;) {
          const { rows } = await client.query(`FETCH ${ROWS_AT_A_TIME} FROM all_rows`);
          yield* rows;
          if (rows.length < ROWS_AT_A_TIME) return;
        }
      } finally {
        await client.query('CLOSE all_rows');
      }
    },
  };
}
