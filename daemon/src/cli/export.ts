import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { archiveLines } from '../keep/archive.ts';
import { openStore } from '../store/open.ts';
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
      const target =
        file === undefined ? process.stdout : createWriteStream(file, { flags: 'wx', mode: 0o600 });
      await pipeline(Readable.from(archiveLines(store)), target, { end: file !== undefined });
    } catch (error) {
      throw fileTrouble(error, file ?? 'the output');
    } finally {
      await store.close();
    }
  },
};

function fileTrouble(error: unknown, name: string): unknown {
  if (!(error instanceof Error) || !('code' in error) || error.name === 'StoreTrouble') return error;
  if (error.code === 'EEXIST') return new CommandTrouble(`${name} is there already. Name a new file.`);
  return new CommandTrouble(`${name} can't be written (${String(error.code)}). Name another file.`);
}
