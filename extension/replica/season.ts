import { readRecord } from '@platewright/core/changes/read.ts';
import type { Kind, RecordOf } from '@platewright/core/records/kinds.ts';
import type { Reading } from './reader.ts';

/** The whole records of a kind with a date in a range, both ends included. Kinds without a date have the empty one. */
export async function recordsBetween<K extends Kind>(
  reading: Reading,
  athlete: string,
  kind: K,
  from: string,
  to: string,
): Promise<RecordOf<K>[]> {
  const rows = await reading.records(athlete, kind, from, to);
  return rows.flatMap((row) => readRecord(kind, row) ?? []);
}

/** The newest whole record of a kind on or before a date, if any. */
export async function newestRecord<K extends Kind>(
  reading: Reading,
  athlete: string,
  kind: K,
  date: string,
): Promise<RecordOf<K> | null> {
  const row = await reading.newest(athlete, kind, date, (row) => readRecord(kind, row) !== null);
  return row === undefined ? null : readRecord(kind, row);
}

export async function recordById<K extends Kind>(
  reading: Reading,
  athlete: string,
  kind: K,
  id: string,
): Promise<RecordOf<K> | null> {
  const row = await reading.record([athlete, id]);
  return row === undefined ? null : readRecord(kind, row);
}
