import { createWriteStream } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { archiveLines } from '../keep/archive.ts';
import { openStore } from '../store/open.ts';
import { finishCopy, placeOfCopy, removeCopy } from '../store/sqlite-copy.ts';
import { explainCopy } from '../store/sqlite-trouble.ts';
import type { Store } from '../store/store.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { type Command, CommandTrouble } from './command.ts';
import { settings, storeOptions } from './settings.ts';

export const exportCommand: Command = {
  name: 'export',
  operands: '[FILE]',
  mostOperands: 1,
  options: storeOptions,
  help: `  npx platewright export > records.jsonl
  npx platewright export records.jsonl

A line of JSON for each record, keys sorted: its fields, and when and where each was last written. Any program can read
it; npx platewright import takes it into an empty store. The pictures of photos are files of their own, in the folder bytes beside
the store: each is named by the sha256 of its record. The daemon may be running.`,
  async run(given) {
    const [file] = given.positionals;
    const store = await openStore(settings(given), 'guest');
    try {
      if (file === undefined)
        await pipeline(Readable.from(archiveLines(store)), process.stdout, { end: false });
      else await writeArchive(store, resolve(file));
    } catch (error) {
      throw fileTrouble(error, file ?? 'the output');
    } finally {
      await store.close();
    }
  },
};

/** Writes a file that appears under its name only when it is whole and on disk, as a backup does. */
async function writeArchive(store: Store, file: string): Promise<void> {
  const unfinished = placeOfCopy(file);
  try {
    await pipeline(Readable.from(archiveLines(store)), createWriteStream(unfinished, { mode: 0o600 }));
    finishCopy(unfinished, file);
  } catch (error) {
    throw explainCopy(error, dirname(file));
  } finally {
    removeCopy(unfinished);
  }
}

function fileTrouble(error: unknown, name: string): unknown {
  if (!(error instanceof Error) || !('code' in error) || error instanceof StoreTrouble) return error;
  return new CommandTrouble(`${name} can't be written (${String(error.code)}). Name another file.`);
}
