import { DatabaseSync } from 'node:sqlite';
import { setImmediate as breathe } from 'node:timers/promises';
import { readChange, readFolded } from './change-row.ts';
import { addUp, sameBytes } from './checksum.ts';
import { CODE_COLUMNS, readCode } from './code-row.ts';
import { DEVICE_COLUMNS, readDevice } from './device-row.ts';
import { createFold, type Fold } from './fold-check.ts';
import { HEAD_COLUMNS, type Head, readHead } from './head-row.ts';
import { RECORD_COLUMNS, readRecordRow } from './record-row.ts';
import { damaged, type Row, text } from './rows.ts';
import { readSetting, SETTING_COLUMNS } from './setting-row.ts';
import { checkedVersion } from './sqlite-file.ts';
import { CHANGES } from './sqlite-log.ts';
import { hasOwnSchema } from './sqlite-schema.ts';
import { StoreTrouble } from './trouble.ts';

/** Rows read before other work of the process gets its turn. */
const ROWS_AT_A_TIME = 500;

/**
 * Faults of a SQLite store, a line each: of the file, of rows that are not as they were written, of records that differ
 * from their changes. Reads one state of the store over a connection of its own, so that writing may go on. Throws
 * StoreTrouble when the file is no store of this schema. With `rows`, records are held against their sum only and not
 * against their changes, which takes no memory.
 */
export async function findFaults(path: string, depth: 'rows' | 'changes' = 'changes'): Promise<string[]> {
  const db = new DatabaseSync(path, { readOnly: true });
  try {
    checkedVersion(db, path);
    db.exec('BEGIN');
    return [...fileFaults(db, 'integrity_check'), ...(await rowFaults(db, depth))];
  } finally {
    db.close();
  }
}

/** What a start looks for, because it must not take long: faults of the file, of small tables and of the log's end. */
export function startFaults(db: DatabaseSync): string[] {
  const faults = fileFaults(db, 'quick_check');
  const head = attempt(faults, () => readHead(headRow(db)));
  for (const [sql, read] of SMALL_TABLES) {
    attempt(faults, () => {
      for (const row of db.prepare(sql).iterate()) read(row);
    });
  }
  if (head !== null && head.seq > head.foldedSeq) {
    const last = db.prepare(`${CHANGES} WHERE c.seq = (SELECT max(seq) FROM changes)`);
    attempt(faults, () => endsAt(last.get(), head));
  }
  return faults;
}

function endsAt(row: Row | undefined, head: Head): void {
  const end = row === undefined ? null : readChange(row, head.foldedHash);
  if (end?.seq !== head.seq || !sameBytes(end.hash, head.hash)) {
    throw damaged(`the change log does not end at ${head.seq}, where it was written to`);
  }
}

function fileFaults(db: DatabaseSync, check: 'quick_check' | 'integrity_check'): string[] {
  const faults = collect(() =>
    db
      .prepare(`PRAGMA ${check}(20)`)
      .all()
      .map((row) => text(row, check))
      .filter((line) => line !== 'ok')
      .map((line) => `file: ${line}`),
  );
  if (!hasOwnSchema(db)) faults.push('file: its tables are not as they were made');
  return faults;
}

async function rowFaults(db: DatabaseSync, depth: 'rows' | 'changes'): Promise<string[]> {
  const faults: string[] = [];
  const head = attempt(faults, () => readHead(headRow(db)));
  for (const [sql, read] of SMALL_TABLES) await eachRow(db, sql, faults, read);
  if (head === null) return faults;
  const fold = depth === 'rows' ? null : createFold(head.foldedSeq > 0);
  faults.push(...(await foldedFaults(db, head)));
  faults.push(...(await logFaults(db, head, fold)));
  faults.push(...(await recordFaults(db, head, fold)));
  return faults;
}

const SMALL_TABLES = [
  [`SELECT ${DEVICE_COLUMNS} FROM devices`, readDevice],
  [`SELECT ${CODE_COLUMNS} FROM codes`, readCode],
  [`SELECT ${SETTING_COLUMNS} FROM settings`, readSetting],
] as const;

function headRow(db: DatabaseSync): Row | undefined {
  return db.prepare(`SELECT ${HEAD_COLUMNS} FROM head WHERE one = 1`).get();
}

async function foldedFaults(db: DatabaseSync, { foldedSeq }: Head): Promise<string[]> {
  const faults: string[] = [];
  let count = 0;
  await eachRow(db, 'SELECT id, seq, clock, checksum FROM folded', faults, (row) => {
    count += 1;
    readFolded(row);
  });
  if (count !== foldedSeq) faults.push(`folded changes: ${count} are there, and ${foldedSeq} were folded`);
  return faults;
}

/** Walks the chain, and gives the sound changes to `fold`. */
async function logFaults(db: DatabaseSync, head: Head, fold: Fold | null): Promise<string[]> {
  const faults: string[] = [];
  let { foldedSeq: seq, foldedHash: hash } = head;
  await eachRow(db, `${CHANGES} ORDER BY c.seq`, faults, (row) => {
    const found = Number(row.seq);
    if (found !== seq + 1) faults.push(`changes: ${seq + 1} to ${found - 1} are missing`);
    seq = found;
    const { change, hash: own } = readChange(row, head.foldedHash);
    hash = own;
    fold?.add(change);
  });
  const ends = seq === head.seq && (sameBytes(hash, head.hash) || faults.length > 0);
  if (!ends) faults.push(`changes: the log ends at ${seq}, and ${head.seq} were written`);
  return faults;
}

async function recordFaults(db: DatabaseSync, head: Head, fold: Fold | null): Promise<string[]> {
  const faults: string[] = [];
  let sum = addUp();
  await eachRow(db, `SELECT ${RECORD_COLUMNS} FROM records`, faults, (row) => {
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

/** Reads all rows, some at a time; what `read` throws is a fault, and so is a table that can't be read to its end. */
async function eachRow(
  db: DatabaseSync,
  sql: string,
  faults: string[],
  read: (row: Row) => unknown,
): Promise<void> {
  let count = 0;
  try {
    for (const row of db.prepare(sql).iterate()) {
      attempt(faults, () => read(row));
      count += 1;
      if (count % ROWS_AT_A_TIME === 0) await breathe();
    }
  } catch (error) {
    faults.push(`file: ${reason(error)}`);
  }
}

function attempt<T>(faults: string[], work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    faults.push(reason(error));
    return null;
  }
}

function collect(work: () => string[]): string[] {
  try {
    return work();
  } catch (error) {
    return [`file: ${reason(error)}`];
  }
}

function reason(error: unknown): string {
  if (error instanceof StoreTrouble) return error.what;
  return error instanceof Error ? error.message : String(error);
}
