import type { DatabaseSync, SQLOutputValue } from 'node:sqlite';
import { StoreTrouble } from './trouble.ts';

export type Row = Record<string, SQLOutputValue>;

export function text(row: Row, column: string): string {
  const value = row[column];
  if (typeof value !== 'string') throw damaged(column);
  return value;
}

export function whole(row: Row, column: string): number {
  const value = row[column];
  if (typeof value !== 'number') throw damaged(column);
  return value;
}

export function bytes(row: Row, column: string): Uint8Array {
  const value = row[column];
  if (!(value instanceof Uint8Array)) throw damaged(column);
  return value;
}

export function maybe<T>(row: Row, column: string, read: (row: Row, column: string) => T): T | null {
  return row[column] === null ? null : read(row, column);
}

function damaged(column: string): StoreTrouble {
  return new StoreTrouble(
    'damaged',
    `The store is damaged (column ${column}). Stop the daemon, run platewright doctor, and go back to a backup.`,
  );
}

/** Runs `work` whole or not at all. */
export function transaction<T>(db: DatabaseSync, work: () => T): T {
  db.exec('BEGIN IMMEDIATE');
  try {
    const result = work();
    db.exec('COMMIT');
    return result;
  } catch (error) {
    if (db.isTransaction) db.exec('ROLLBACK');
    throw error;
  }
}
