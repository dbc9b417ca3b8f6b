import type { DatabaseSync, SQLInputValue } from 'node:sqlite';

/** Rows written by one call: the way into SQLite costs as much as a row does, and a longer statement saves no more. */
const ROWS_AT_A_TIME = 25;

/** Writes rows of `count` values each; `sql` says where with `VALUES` and, in the place of the rows, `ROWS`. */
export function rowInsert(
  db: DatabaseSync,
  sql: string,
  count: number,
): (rows: readonly (readonly SQLInputValue[])[]) => void {
  const row = `(${Array(count).fill('?').join(', ')})`;
  const prepare = (rows: number) => db.prepare(sql.replace('ROWS', Array(rows).fill(row).join(', ')));
  const [one, many] = [prepare(1), prepare(ROWS_AT_A_TIME)];
  return (rows) => {
    const whole = rows.length - (rows.length % ROWS_AT_A_TIME);
    for (let i = 0; i < whole; i += ROWS_AT_A_TIME) many.run(...rows.slice(i, i + ROWS_AT_A_TIME).flat());
    for (const values of rows.slice(whole)) one.run(...values);
  };
}
