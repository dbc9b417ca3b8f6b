import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { flush } from './flush.ts';
import { damaged, text } from './rows.ts';
import { StoreTrouble } from './trouble.ts';

/** Copies a database into a new file that appears under its name only when it is whole and on disk. */
export function copyDatabase(db: DatabaseSync, path: string): void {
  const unfinished = beginCopy(db, path);
  try {
    requireWhole(unfinished);
    finishCopy(unfinished, path);
  } finally {
    rmSync(unfinished, { force: true });
  }
}

/** Copies a store as copyDatabase does, and keeps the copy only when no fault is in it. */
export async function copySound(
  db: DatabaseSync,
  path: string,
  findFaults: (path: string) => Promise<string[]>,
): Promise<void> {
  const unfinished = beginCopy(db, path);
  try {
    const [fault] = await findFaults(unfinished);
    if (fault !== undefined) throw damaged(fault);
    finishCopy(unfinished, path);
  } finally {
    rmSync(unfinished, { force: true });
  }
}

function beginCopy(db: DatabaseSync, path: string): string {
  if (existsSync(path)) throw new StoreTrouble('exists', `${path} is there already. Name a new file.`);
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const unfinished = `${path}.unfinished`;
  rmSync(unfinished, { force: true });
  db.prepare('VACUUM INTO ?').run(unfinished);
  return unfinished;
}

function finishCopy(unfinished: string, path: string): void {
  flush(unfinished);
  renameSync(unfinished, path);
  flush(dirname(path));
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
