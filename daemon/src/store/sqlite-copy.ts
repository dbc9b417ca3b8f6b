import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { flush } from './flush.ts';
import { damaged, text } from './rows.ts';
import { explainCopy } from './sqlite-trouble.ts';
import { StoreTrouble } from './trouble.ts';

/** Copies a database into a new file that appears under its name only when it is whole and on disk. */
export function copyDatabase(db: DatabaseSync, path: string): void {
  const unfinished = placeOfCopy(path);
  try {
    copyInto(db, unfinished);
    requireWhole(unfinished);
    finishCopy(unfinished, path);
  } finally {
    removeCopy(unfinished);
  }
}

/** Copies a store as copyDatabase does, and keeps the copy only when no fault is in it. */
export async function copySound(
  db: DatabaseSync,
  path: string,
  findFaults: (path: string) => Promise<string[]>,
): Promise<void> {
  const unfinished = placeOfCopy(path);
  try {
    copyInto(db, unfinished);
    const [fault] = await findFaults(unfinished);
    if (fault !== undefined) throw damaged(fault);
    finishCopy(unfinished, path);
  } finally {
    removeCopy(unfinished);
  }
}

/** Makes room for a copy; returns under which name it is written. */
export function placeOfCopy(path: string): string {
  if (existsSync(path)) throw new StoreTrouble('exists', `${path} is there already. Name a new file.`);
  const unfinished = `${path}.unfinished`;
  explained(path, () => {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    removeCopy(unfinished);
  });
  return unfinished;
}

/** Removes a copy that was not finished, and what SQLite keeps beside one. */
export function removeCopy(path: string): void {
  const files = ['', '-wal', '-shm'].map((end) => `${path}${end}`);
  // Where a file stands in the place of a folder, rmSync would throw, and hide what went wrong before.
  for (const file of files) if (existsSync(file)) rmSync(file);
}

function copyInto(db: DatabaseSync, unfinished: string): void {
  explained(unfinished, () => db.prepare('VACUUM INTO ?').run(unfinished));
}

/** Gives a copy its name once it is on disk. */
export function finishCopy(unfinished: string, path: string): void {
  explained(path, () => {
    flush(unfinished);
    renameSync(unfinished, path);
    flush(dirname(path));
  });
}

/** Where there is no room, it is the disk of the copy that has none. */
function explained(path: string, work: () => void): void {
  try {
    work();
  } catch (error) {
    throw explainCopy(error, dirname(path));
  }
}

function requireWhole(path: string): void {
  const copy = new DatabaseSync(path, { readOnly: true });
  try {
    const row = copy.prepare('PRAGMA quick_check(1)').get();
    if (row === undefined || text(row, 'quick_check') !== 'ok') {
      throw damaged('a copy of it is not sound');
    }
  } finally {
    copy.close();
  }
}
