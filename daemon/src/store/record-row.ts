import type { Change, Json } from '@platewright/core/changes/change.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { checksum, sameBytes } from './checksum.ts';
import { packClocks, unpackClocks } from './clocks-column.ts';
import { bytes, damaged, keepable, maybe, type Row, text } from './rows.ts';

/** Columns of a record, in the order in which they are summed and written. */
export const RECORD_COLUMNS = 'athlete, id, kind, date, fields, clocks, checksum';

/** A record with the checksum of its row. */
export interface KeptRecord {
  record: StoredRecord;
  checksum: Uint8Array;
}

export type RecordValues = ReturnType<typeof recordValues>;

/** Text that names a record's place; neither part has a space. */
export function placeKey(athlete: string, id: string): string {
  return `${athlete} ${id}`;
}

/** Values in the order of RECORD_COLUMNS; the last one is the checksum of the others. */
export function recordValues({ athlete, id, kind, fields, clocks }: StoredRecord) {
  return summed([athlete, id, kind, dateOf(fields), JSON.stringify(fields), packClocks(clocks)]);
}

/** The values of a record that one change made; `fields` is the text of the change's fields. */
export function madeValues(
  { athlete, record, kind, fields: { date }, clock }: Change,
  fields: string,
): RecordValues {
  return summed([athlete, record, kind, dateOf({ date }), fields, JSON.stringify(clock)]);
}

function dateOf({ date }: { date?: Json | undefined }): string | null {
  return typeof date === 'string' ? keepable(date) : null;
}

function summed<const V extends readonly (string | null)[]>(values: V) {
  return [...values, checksum(...values)] as const;
}

/** Throws StoreTrouble that names the record when the row is not as it was written. */
export function readRecordRow(row: Row): KeptRecord {
  const [athlete, id, kind] = [text(row, 'athlete'), text(row, 'id'), text(row, 'kind')];
  const [date, fieldsText, clocksText] = [maybe(row, 'date', text), text(row, 'fields'), text(row, 'clocks')];
  const sum = bytes(row, 'checksum');
  if (!sameBytes(sum, checksum(athlete, id, kind, date, fieldsText, clocksText))) {
    throw damaged(`record ${id} of athlete ${athlete}: its checksum does not match`);
  }
  const fields: StoredRecord['fields'] = JSON.parse(fieldsText);
  return { record: { athlete, id, kind, fields, clocks: unpackClocks(clocksText, fields) }, checksum: sum };
}
