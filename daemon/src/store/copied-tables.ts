import { CODE_COLUMNS } from './code-row.ts';
import { DEVICE_COLUMNS } from './device-row.ts';
import { HEAD_COLUMNS } from './head-row.ts';
import { RECORD_COLUMNS } from './record-row.ts';
import { SETTING_COLUMNS } from './setting-row.ts';

/** Tables that both engines have with these columns, and whose rows pass between them as they are; the log is the other. */
export const COPIED_TABLES: readonly { table: string; columns: string }[] = [
  { table: 'folded', columns: 'id, seq, clock, checksum' },
  { table: 'records', columns: RECORD_COLUMNS },
  { table: 'devices', columns: DEVICE_COLUMNS },
  { table: 'codes', columns: CODE_COLUMNS },
  { table: 'settings', columns: SETTING_COLUMNS },
  { table: 'head', columns: `one, ${HEAD_COLUMNS}` },
];

/** Items in portions of `size`, the last of which may be smaller. */
export async function* portions<T>(items: AsyncIterable<T> | Iterable<T>, size: number): AsyncGenerator<T[]> {
  let some: T[] = [];
  for await (const item of items) {
    some.push(item);
    if (some.length < size) continue;
    yield some;
    some = [];
  }
  if (some.length > 0) yield some;
}
