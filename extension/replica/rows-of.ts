import type { Table } from 'dexie';
import { keyOf, type RecordKey, type RecordRow } from './rows.ts';

/** Keys that are asked for as one range. */
const GROUP = 500;
/** A range with more rows than that for each key has too many that nobody wants: there each key is asked for alone. */
const ROWS_A_KEY = 2;

/**
 * Rows in the order of the keys; undefined where there is none. A request for each key alone is a third of the cost of a
 * page of changes. Ids follow the time at which they were made, so keys of one page lie close together: they are read
 * range by range, and a range that is new, as each is in a first pull, is one request that finds nothing.
 */
export async function rowsOf(
  table: Table<RecordRow, RecordKey>,
  keys: readonly RecordKey[],
): Promise<(RecordRow | undefined)[]> {
  const texts = keys.map((key) => key.join());
  const byText = new Map(keys.map((key, i) => [texts[i], key]));
  // As text, because that is quick: no sign in an id sorts before the comma, so the order is that of the database.
  const sorted = [...byText.keys()].sort().flatMap((text) => {
    const key = byText.get(text);
    return key === undefined ? [] : [key];
  });
  const groups = Array.from({ length: Math.ceil(sorted.length / GROUP) }, (_, i) =>
    sorted.slice(i * GROUP, (i + 1) * GROUP),
  );
  const found = await Promise.all(groups.map((group) => rowsNear(table, group)));
  const rows = new Map(found.flat().map((row) => [keyOf(row).join(), row]));
  return texts.map((text) => rows.get(text));
}

/** Rows of sorted keys, and maybe others between them. */
async function rowsNear(table: Table<RecordRow, RecordKey>, keys: RecordKey[]): Promise<RecordRow[]> {
  const [first, last] = [keys[0], keys.at(-1)];
  if (first === undefined || last === undefined) return [];
  const most = ROWS_A_KEY * keys.length;
  const near = await table.where('[athlete+id]').between(first, last, true, true).limit(most).toArray();
  if (near.length < most) return near;
  const rows = await table.bulkGet(keys);
  return rows.filter((row) => row !== undefined);
}
