import { StoreTrouble } from './trouble.ts';

/** A row as a database driver gives it. */
export type Row = Readonly<Record<string, unknown>>;

export function text(row: Row, column: string): string {
  const value = row[column];
  if (typeof value !== 'string') throw unreadable(row, column);
  return value;
}

export function whole(row: Row, column: string): number {
  const value = row[column];
  if (typeof value !== 'number') throw unreadable(row, column);
  return value;
}

export function bytes(row: Row, column: string): Uint8Array {
  const value = row[column];
  if (!(value instanceof Uint8Array)) throw unreadable(row, column);
  return value;
}

function unreadable({ id }: Row, column: string): StoreTrouble {
  return damaged(`the column ${column}${typeof id === 'string' ? ` of ${id}` : ''} can not be read`);
}

/** Bytes in hex. */
export function hex(row: Row, column: string): string {
  return Buffer.from(bytes(row, column)).toString('hex');
}

/**
 * Text that a client chose, as every database gives it back: half of a character would be read as another one, and so
 * taken for a flipped bit, and PostgreSQL takes no NUL. Within JSON both are escaped.
 */
export function keepable(text: string): string {
  return text.toWellFormed().replaceAll('\0', '\ufffd');
}

export function maybe<T>(row: Row, column: string, read: (row: Row, column: string) => T): T | null {
  return row[column] === null ? null : read(row, column);
}

/** What is thrown when something in the store is not as it was written. */
export function damaged(what: string): StoreTrouble {
  return new StoreTrouble(
    'damaged',
    (options) =>
      `The store is damaged: ${what}. It takes no changes until it is put right. Run npx platewright verify${options}, which says what to go back to.`,
    what,
  );
}
