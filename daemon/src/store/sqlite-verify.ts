import { DatabaseSync } from 'node:sqlite';
import { setImmediate as breathe } from 'node:timers/promises';
import { readChange } from './change-row.ts';
import { type Head, readHead } from './head-row.ts';
import { attempt, HEAD, rowFaults, SMALL_TABLES } from './row-check.ts';
import { damaged, type Row, text } from './rows.ts';
import { checkedVersion } from './sqlite-file.ts';
import { CHANGES } from './sqlite-log.ts';
import { hasOwnSchema } from './sqlite-schema.ts';

/** Rows read before other work of the process gets its turn. */
const ROWS_AT_A_TIME = 500;

/**
 * Faults of a SQLite store, a line each: of the file and of its rows. Reads one state of the store over a connection of
 * its own, so that writing may go on. Throws StoreTrouble when the file is no store of this schema.
 */
export async function findFaults(path: string, depth: 'rows' | 'changes' = 'changes'): Promise<string[]> {
  const db = new DatabaseSync(path, { readOnly: true });
  try {
    const unreadable = whyUnreadable(db, path);
    if (unreadable !== null) return [`file: ${unreadable}`];
    db.exec('BEGIN');
    const source = { rows: (sql: string) => rowsOf(db, sql), changes: `${CHANGES} ORDER BY c.seq` };
    return [...fileFaults(db, 'integrity_check'), ...(await rowFaults(source, depth))];
  } finally {
    db.close();
  }
}

/** What SQLite says of a file that it can't begin to read; null when it can. Throws StoreTrouble as checkedVersion does. */
export function whyUnreadable(db: DatabaseSync, path: string): string | null {
  try {
    checkedVersion(db, path);
    return null;
  } catch (error) {
    if (error instanceof Error && 'errcode' in error) return error.message;
    throw error;
  }
}

/** What a start looks for, because it must not take long: faults of the file, of small tables and of the log's end. */
export function startFaults(db: DatabaseSync): string[] {
  const faults = fileFaults(db, 'quick_check');
  const head = attempt(faults, () => readHead(db.prepare(HEAD).get()));
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
  if (end?.seq !== head.seq || end.hash !== head.hash) {
    throw damaged(`the change log does not end at ${head.seq}, where it was written to`);
  }
}

function fileFaults(db: DatabaseSync, check: 'quick_check' | 'integrity_check'): string[] {
  const faults: string[] = [];
  attempt(faults, () => {
    const lines = db.prepare(`PRAGMA ${check}(20)`).all();
    for (const row of lines) if (text(row, check) !== 'ok') faults.push(`file: ${text(row, check)}`);
  });
  if (!hasOwnSchema(db)) faults.push('file: its tables are not as they were made');
  return faults;
}

async function* rowsOf(db: DatabaseSync, sql: string): AsyncGenerator<Row> {
  let count = 0;
  for (const row of db.prepare(sql).iterate()) {
    yield row;
    count += 1;
    if (count % ROWS_AT_A_TIME === 0) await breathe();
  }
}
