import { dirname, resolve } from 'node:path';
import { originOf } from '../keep/backup.ts';
import { backupFaults } from '../keep/backup-faults.ts';
import { bytesFolder } from '../keep/bytes.ts';
import { photoAdvice, photoFaults } from '../keep/photo-check.ts';
import { restoreAdvice } from '../keep/restore-advice.ts';
import { openStore } from '../store/open.ts';
import { photosInFile } from '../store/sqlite-photos.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { type Command, CommandTrouble, note, printable, say } from './command.ts';
import { optionsFor, settings, storeOptions } from './settings.ts';

export const verify: Command = {
  name: 'verify',
  operands: '[FILE]',
  mostOperands: 1,
  options: storeOptions,
  help: `  npx platewright verify
  npx platewright verify backup.sqlite

Reads all of the store, or of a backup, and holds every row against its checksum, every record against its changes, and every
photo against the folder bytes beside it. A line for each fault; when there is one, it says what to go back to. The daemon may
be running.`,
  async run(given) {
    const [file] = given.positionals;
    const { data, store, backups } = settings(given);
    const folder = bytesFolder(file === undefined ? data : dirname(resolve(file)));
    const { rows, photos, origin } =
      file === undefined
        ? await faultsOf({ data, store }, folder).catch(asFault)
        : await faultsOfFile(resolve(file), folder);
    for (const fault of [...rows, ...photos]) say(printable(fault));
    if (rows.length > 0) {
      throw new CommandTrouble(
        file === undefined
          ? await restoreAdvice(backups, optionsFor({ data, store }), Date.now(), origin)
          : 'Do not go back to this file.',
      );
    }
    if (photos.length > 0) throw new CommandTrouble(photoAdvice(folder));
    note('Every row and every photo is as it was written.');
  },
};

interface Faults {
  rows: string[];
  photos: string[];
  /** What the store is called, see originOf; null when it can't say. */
  origin: string | null;
}

async function faultsOf(place: { data: string; store: string | null }, folder: string): Promise<Faults> {
  const store = await openStore(place, 'guest');
  try {
    const rows = await store.verify();
    const photos = rows.length === 0 ? await store.records({ kind: 'photo' }) : [];
    const origin = await originOf(store).catch(() => null);
    return { rows, photos: photoFaults(photos, folder), origin };
  } finally {
    await store.close();
  }
}

async function faultsOfFile(path: string, folder: string): Promise<Faults> {
  const rows = await backupFaults(path);
  const photos = rows.length === 0 ? photoFaults(photosInFile(path), folder) : [];
  return { rows, photos, origin: null };
}

/** A store too damaged to be opened is a fault; that there is none is not. */
function asFault(error: unknown): Faults {
  if (error instanceof StoreTrouble && error.code === 'damaged')
    return { rows: [error.what], photos: [], origin: null };
  throw error;
}
