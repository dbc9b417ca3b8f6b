import type { DatabaseSync, SQLInputValue } from 'node:sqlite';

/** Rows written by one call: the way into SQLite costs as much as a row does, and a longer statement saves no more. */
const ROWS_AT_A_TIME = 25;

/**
 * Inserts new rows into a table, named with its columns; `row` is one row of the statement. A row that can't be inserted
 * ends the transaction: were the statement alone taken back, SQLite would keep a copy of each page it touches.
 */
export function rowInsert(
  db: DatabaseSync,
  table: string,
  row: string,
): (rows: readonly (readonly SQLInputValue[])[]) => void {
  const prepare = (count: number) =>
    db.prepare(`INSERT OR ROLLBACK INTO ${table} VALUES ${Array(count).fill(`(${row})`).join(', ')}`);
  const [one, many] = [prepare(1), prepare(ROWS_AT_A_TIME)];
  return (rows) => {
    const whole = rows.length - (rows.length % ROWS_AT_A_TIME);
    for (let i = 0; i < whole; i += ROWS_AT_A_TIME) many.run(...rows.slice(i, i + ROWS_AT_A_TIME).flat());
    for (const values of rows.slice(whole)) one.run(...values);
  };
}
