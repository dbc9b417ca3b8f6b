import { StoreTrouble } from './trouble.ts';

const UNWRITABLE = new Set(['EACCES', 'EPERM', 'EROFS', 'ENOTDIR', 'ENOENT', 'EEXIST']);

/** SQLITE_IOERR_SHMSIZE: there is no room for the file that SQLite keeps beside a store while it is open. */
const NO_ROOM_BESIDE = 4874;

/** SQLite's primary result codes (sqlite.org/rescode.html) in words for the person whose store it is. */
const IN_WORDS: Record<number, (folder: string, said: string) => StoreTrouble> = {
  5: (folder) =>
    new StoreTrouble('in-use', `The store in ${folder} is busy: another program holds it. Try again.`),
  8: unwritable,
  10: failing,
  11: damaged,
  13: full,
  14: unwritable,
  26: damaged,
};

/** The error as StoreTrouble when a person can mend it, else as it came. */
export function explain(error: unknown, folder: string): unknown {
  if (!(error instanceof Error) || error instanceof StoreTrouble) return error;
  // A text of the change log that can't be read; SQLite gives it no code of its own.
  if (error.message === 'malformed JSON') return damaged(folder, error.message);
  if ('errcode' in error && error.errcode === NO_ROOM_BESIDE) return full(folder);
  if ('errcode' in error) return IN_WORDS[Number(error.errcode) & 0xff]?.(folder, error.message) ?? error;
  if (!('code' in error)) return error;
  if (error.code === 'ENOSPC') return full(folder);
  return UNWRITABLE.has(String(error.code)) ? unwritable(folder) : error;
}

/** The same of a copy that is written into a folder; what is wrong with the store it is made of is left as it came. */
export function explainCopy(error: unknown, folder: string): unknown {
  const known = explain(error, folder);
  if (!(known instanceof StoreTrouble) || known === error) return error;
  if (known.code === 'full') return known;
  if (known.code !== 'unwritable') return error;
  return new StoreTrouble('unwritable', `The folder ${folder} can't be written. Name another place.`);
}

function unwritable(folder: string): StoreTrouble {
  return new StoreTrouble(
    'unwritable',
    `The folder ${folder} can't be written. Give it to this user, or name another one with --data.`,
  );
}

function damaged(folder: string, said: string): StoreTrouble {
  return new StoreTrouble(
    'damaged',
    (options) =>
      `The store in ${folder} is damaged. Run npx platewright verify${options}, which says what to go back to.`,
    said,
  );
}

function failing(folder: string): StoreTrouble {
  return new StoreTrouble(
    'failing',
    `The disk that holds ${folder} can't be read or written. Copy the backups to another disk, then look at this one.`,
  );
}

/** The store's file was taken away or replaced while it was open. */
export function moved(folder: string): StoreTrouble {
  return new StoreTrouble(
    'moved',
    `The store in ${folder} was moved or replaced while it was served. Nothing was saved; put it back, or start the daemon anew.`,
  );
}

function full(folder: string): StoreTrouble {
  return new StoreTrouble(
    'full',
    `The disk that holds ${folder} is full. Nothing was saved; free some space.`,
  );
}
