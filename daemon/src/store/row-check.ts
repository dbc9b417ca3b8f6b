import { readChange, readFolded } from './change-row.ts';
import { addUp, sameBytes } from './checksum.ts';
import { CODE_COLUMNS, readCode } from './code-row.ts';
import { DEVICE_COLUMNS, readDevice } from './device-row.ts';
import { createFold, type Fold } from './fold-check.ts';
import { HEAD_COLUMNS, type Head, readHead } from './head-row.ts';
import { RECORD_COLUMNS, readRecordRow } from './record-row.ts';
import { hex, maybe, type Row } from './rows.ts';
import { readSetting, SETTING_COLUMNS } from './setting-row.ts';
import { StoreTrouble } from './trouble.ts';

/** Gives the rows of one state of a store. */
export interface RowSource {
  rows(sql: string): AsyncIterable<Row>;
  /** Selects the rows of the log with the hash of the row before each, in order. */
  changes: string;
}

export const HEAD = `SELECT ${HEAD_COLUMNS} FROM head WHERE one = 1`;
export const FOLDED = 'SELECT id, seq, clock, checksum FROM folded';
const RECORDS = `SELECT ${RECORD_COLUMNS} FROM records`;
/** The tables of few rows, each of which stands for itself. */
export const SMALL_TABLES = [
  [`SELECT ${DEVICE_COLUMNS} FROM devices`, readDevice],
  [`SELECT ${CODE_COLUMNS} FROM codes`, readCode],
  [`SELECT ${SETTING_COLUMNS} FROM settings`, readSetting],
] as const;

/**
 * Faults of a store's rows, a line each: rows that are not as they were written, and records that differ from their
 * changes. With `rows`, records are held against their sum only and not against their changes, which takes no memory.
 */
export async function rowFaults(source: RowSource, depth: 'rows' | 'changes'): Promise<string[]> {
  const faults: string[] = [];
  for (const [sql, read] of SMALL_TABLES) await eachRow(source, sql, faults, read);
  const heads: Head[] = [];
  await eachRow(source, HEAD, faults, (row) => heads.push(readHead(row)));
  const [head] = heads;
  if (head === undefined) return faults.length > 0 ? faults : ['head of the change log: it is gone'];
  const fold = depth === 'rows' ? null : createFold(head.foldedSeq > 0);
  faults.push(...(await foldedFaults(source, head)));
  faults.push(...(await logFaults(source, head, fold)));
  faults.push(...(await recordFaults(source, head, fold)));
  return faults;
}

async function foldedFaults(source: RowSource, { foldedSeq }: Head): Promise<string[]> {
  const faults: string[] = [];
  let count = 0;
  await eachRow(source, FOLDED, faults, (row) => {
    count += 1;
    readFolded(row);
  });
  if (count !== foldedSeq) faults.push(`folded changes: ${count} are there, and ${foldedSeq} were folded`);
  return faults;
}

/** Walks the chain, and gives the sound changes to `fold`. */
async function logFaults(source: RowSource, head: Head, fold: Fold | null): Promise<string[]> {
  const faults: string[] = [];
  let { foldedSeq: seq, foldedHash: hash } = head;
  await eachRow(source, source.changes, faults, (row) => {
    const found = Number(row.seq);
    if (found !== seq + 1) faults.push(`changes: ${seq + 1} to ${found - 1} are missing`);
    else if ((maybe(row, 'before', hex) ?? head.foldedHash) !== hash) {
      faults.push(`change ${found}: it does not follow the one before it`);
    }
    seq = found;
    hash = hex(row, 'hash');
    fold?.add(readChange(row, head.foldedHash).change);
  });
  if (seq !== head.seq || hash !== head.hash) {
    faults.push(`changes: the log ends at ${seq}, and ${head.seq} were written`);
  }
  return faults;
}

async function recordFaults(source: RowSource, head: Head, fold: Fold | null): Promise<string[]> {
  const faults: string[] = [];
  let sum = addUp();
  await eachRow(source, RECORDS, faults, (row) => {
    fold?.isThere(String(row.athlete), String(row.id));
    const { record, checksum } = readRecordRow(row);
    sum = addUp(sum, checksum);
    const fault = fold?.compare(record) ?? null;
    if (fault !== null) faults.push(fault);
  });
  faults.push(...(fold?.missing() ?? []));
  if (faults.length === 0 && !sameBytes(sum, head.recordsSum)) {
    faults.push('records: one is missing, or was set back');
  }
  return faults;
}

/** Reads all rows; what `read` throws is a fault, and so is a table that can't be read to its end. */
async function eachRow(
  source: RowSource,
  sql: string,
  faults: string[],
  read: (row: Row) => unknown,
): Promise<void> {
  try {
    for await (const row of source.rows(sql)) attempt(faults, () => read(row));
  } catch (error) {
    faults.push(`file: ${faultReason(error)}`);
  }
}

/** The result of `work`; null when it threw, with the reason added to `faults`. */
export function attempt<T>(faults: string[], work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    faults.push(faultReason(error));
    return null;
  }
}

function faultReason(error: unknown): string {
  if (error instanceof StoreTrouble) return error.what;
  return error instanceof Error ? error.message : String(error);
}
