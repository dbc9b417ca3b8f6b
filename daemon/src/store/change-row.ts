import type { Change } from '@platewright/core/changes/change.ts';
import type { Clock } from '@platewright/core/changes/clock.ts';
import { checksum, sameBytes, sha256 } from './checksum.ts';
import { bytes, damaged, hex, maybe, type Row, text, whole } from './rows.ts';

const FIELDS = ',"fields":';

/** A row of the change log; `hash`, in hex, covers it and the hash of the row before. */
export interface ChangeRow {
  seq: number;
  change: Change;
  body: string;
  hash: string;
}

/** A change as the log keeps it, and the part of that text that holds its fields, so that they are written out once. */
export function changeText({ id, athlete, device, clock, kind, record, fields }: Change): {
  body: string;
  fields: string;
} {
  const body = JSON.stringify({ id, athlete, device, clock, kind, record, fields });
  // Quotes within a value are escaped, so this is found where the fields begin and nowhere before.
  const begin = body.indexOf(FIELDS) + FIELDS.length;
  return { body, fields: body.slice(begin, -1) };
}

/** Hash of a row of the change log, SHA-256 over a line each of the hash before it, its number and its text; all in hex. */
export function chainHash(before: string, seq: number, body: string): string {
  return sha256(`${before}\n${seq}\n${body}`);
}

/**
 * Reads a row with the columns seq, id, body, hash and `before`, the hash of the row before; null there means the last
 * folded one, `foldedHash`. Throws StoreTrouble that names the change when it is not as it was written.
 */
export function readChange(row: Row, foldedHash: string): ChangeRow {
  const [seq, id, body, found] = [whole(row, 'seq'), text(row, 'id'), text(row, 'body'), hex(row, 'hash')];
  const before = maybe(row, 'before', hex) ?? foldedHash;
  if (found !== chainHash(before, seq, body)) {
    throw damaged(`change ${seq} (${id}): its checksum does not match`);
  }
  const change: Change = JSON.parse(body);
  if (change.id !== id) throw damaged(`change ${seq}: its id was altered`);
  return { seq, change, body, hash: found };
}

/** A change whose row is gone: its id, number and clock still answer a device that sends it again. */
export interface FoldedChange {
  seq: number;
  clock: Clock;
}

/** Values of the columns id, seq, clock, checksum. */
export function foldedValues(id: string, { seq, clock }: FoldedChange) {
  return [id, seq, clock, checksum(id, seq, clock)] as const;
}

export function readFolded(row: Row): FoldedChange {
  const [id, seq, clock] = [text(row, 'id'), whole(row, 'seq'), text(row, 'clock')];
  if (sameBytes(bytes(row, 'checksum'), checksum(id, seq, clock))) return { seq, clock };
  throw damaged(`folded change ${seq} (${id}): its checksum does not match`);
}
