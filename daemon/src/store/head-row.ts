import type { Clock } from '@platewright/core/changes/clock.ts';
import { checksum, sameBytes } from './checksum.ts';
import { bytes, damaged, hex, maybe, type Row, text, whole } from './rows.ts';

/** Where the change log ends and begins, and what the records add up to. */
export interface Head {
  /** Number of the last change, and its hash in hex. */
  seq: number;
  hash: string;
  /** The latest clock of all changes. */
  clock: Clock | null;
  /** The same of the last change that is folded: its row is gone, its id is known. */
  foldedSeq: number;
  foldedHash: string;
  /** Sum of the checksums of all records, so that one that is missing or set back is noticed. */
  recordsSum: Uint8Array;
}

export const HEAD_COLUMNS = 'seq, hash, clock, folded_seq, folded_hash, records_sum, checksum';

/** Values in the order of HEAD_COLUMNS. */
export function headValues({ seq, hash, clock, foldedSeq, foldedHash, recordsSum }: Head) {
  const [last, folded] = [Buffer.from(hash, 'hex'), Buffer.from(foldedHash, 'hex')];
  const values = [seq, last, clock, foldedSeq, folded, recordsSum] as const;
  return [...values, checksum(...values)] as const;
}

export function readHead(row: Row | undefined): Head {
  if (row === undefined) throw damaged('the head of its change log is gone');
  const head: Head = {
    seq: whole(row, 'seq'),
    hash: hex(row, 'hash'),
    clock: maybe(row, 'clock', text),
    foldedSeq: whole(row, 'folded_seq'),
    foldedHash: hex(row, 'folded_hash'),
    recordsSum: bytes(row, 'records_sum'),
  };
  if (sameBytes(bytes(row, 'checksum'), headValues(head)[6])) return head;
  throw damaged('head of the change log: its checksum does not match');
}
