import type { DatabaseSync, SQLInputValue, SQLOutputValue } from 'node:sqlite';

/**
 * Finds the rows of a table whose id is among some. Ids follow the time at which they were made, so those of a push lie
 * together, and mostly where nothing is yet: one look at that range then takes the place of one for each id.
 * `select` gives the rows up to its WHERE, whose conditions on other columns stand in `also`, with their values first.
 */
export function rowsPicked(
  db: DatabaseSync,
  { select, table, id, also = '' }: { select: string; table: string; id: string; also?: string },
): (ids: readonly string[], ...values: SQLInputValue[]) => Record<string, SQLOutputValue>[] {
  const any = db.prepare(`SELECT 1 FROM ${table} WHERE ${also} ${id} BETWEEN ? AND ? LIMIT 1`);
  const some = db.prepare(`${select} WHERE ${also} ${id} IN (SELECT value FROM json_each(?))`);
  return (ids, ...values) => {
    const [first = ''] = ids;
    let [low, high] = [first, first];
    for (const one of ids) {
      if (one < low) low = one;
      else if (one > high) high = one;
    }
    return any.get(...values, low, high) === undefined ? [] : some.all(...values, JSON.stringify(ids));
  };
}
