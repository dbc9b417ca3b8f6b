import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { text } from './sqlite-rows.ts';
import { StoreTrouble } from './trouble.ts';

/** Copies a database into a new file that appears under its name only when it is whole, checked and on disk. */
export function copyDatabase(db: DatabaseSync, path: string): void {
  if (existsSync(path)) throw new StoreTrouble('exists', `${path} is there already. Name a new file.`);
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const unfinished = `${path}.unfinished`;
  rmSync(unfinished, { force: true });
  try {
    db.prepare('VACUUM INTO ?').run(unfinished);
    requireSound(unfinished);
    flush(unfinished);
    renameSync(unfinished, path);
    flush(dirname(path));
  } finally {
    rmSync(unfinished, { force: true });
  }
}

function requireSound(path: string): void {
  const copy = new DatabaseSync(path, { readOnly: true });
  try {
    const row = copy.prepare('PRAGMA quick_check(1)').get();
    if (row === undefined || text(row, 'quick_check') !== 'ok') {
      throw new StoreTrouble(
        'damaged',
        'The copy of the store is not sound, and was not kept. Run platewright doctor.',
      );
    }
  } finally {
    copy.close();
  }
}

function flush(path: string): void {
  const file = openSync(path, 'r');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
