import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import { ArchiveTrouble, importArchive } from '../keep/archive.ts';
import { clampAhead } from '../server/writer.ts';
import { openStore } from '../store/open.ts';
import { type Command, CommandTrouble, note, printable } from './command.ts';
import { settings, storeOptions } from './settings.ts';

export const importCommand: Command = {
  name: 'import',
  operands: '[FILE]',
  mostOperands: 1,
  options: storeOptions,
  help: `  npx platewright import records.jsonl
  npx platewright import --data ~/restored < records.jsonl

All of it is taken in, or nothing. The store must be empty and the daemon stopped. Devices are paired anew afterwards, and
the folder bytes of photos is copied by hand; npx platewright verify says which are missing.`,
  async run(given) {
    const [file] = given.positionals;
    const store = await openStore(settings(given), 'owner');
    try {
      if ((await store.lastSeq()) > 0) {
        throw new CommandTrouble('This store has records already. Name an empty folder with --data.');
      }
      const input = file === undefined ? process.stdin : createReadStream(file);
      const count = await importArchive(store, linesOf(input), clampAhead(Date.now(), null));
      note(`${count} records were imported.`);
    } catch (error) {
      throw error instanceof ArchiveTrouble ? new CommandTrouble(printable(error.message)) : error;
    } finally {
      await store.close();
    }
  },
};

async function* linesOf(input: NodeJS.ReadableStream): AsyncGenerator<string> {
  const failed = new Promise<never>((_, reject) => {
    input.once('error', () => reject(new CommandTrouble('The file can’t be read. Look at its name.')));
  });
  failed.catch(() => undefined);
  const lines = createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })[Symbol.asyncIterator]();
  for (;;) {
    const { value, done } = await Promise.race([lines.next(), failed]);
    if (done === true) return;
    yield value;
  }
}
