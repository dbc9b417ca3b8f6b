import { resolve } from 'node:path';
import { bytesFolder } from '../keep/bytes.ts';
import { photoFaults } from '../keep/photo-check.ts';
import { restoreAdvice } from '../keep/restore-advice.ts';
import { openStore } from '../store/open.ts';
import { findFaults } from '../store/sqlite-verify.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { type Command, CommandTrouble, note, say } from './command.ts';
import { settings, storeOptions } from './settings.ts';

export const verify: Command = {
  name: 'verify',
  operands: '[FILE]',
  mostOperands: 1,
  options: storeOptions,
  help: `  platewright verify
  platewright verify backup.sqlite

Reads all of the store, or of a backup, and holds every row against its checksum and every record against its changes. A
line for each fault; when there is one, it says which backup to go back to. The daemon may be running.`,
  async run(given) {
    const [file] = given.positionals;
    const { data, store, backups } = settings(given);
    const faults =
      file === undefined ? await faultsOf({ data, store }) : await findFaults(resolve(file)).catch(asFault);
    for (const fault of faults) say(fault);
    if (faults.length === 0) return note('Every row is as it was written.');
    throw new CommandTrouble(
      file === undefined ? await restoreAdvice(backups) : 'Do not go back to this file.',
    );
  },
};

async function faultsOf(place: { data: string; store: string | null }): Promise<string[]> {
  try {
    const store = await openStore(place, 'guest');
    try {
      return [...(await store.verify()), ...(await photoFaults(store, bytesFolder(place.data)))];
    } finally {
      await store.close();
    }
  } catch (error) {
    return asFault(error);
  }
}

/** A store too damaged to be opened is a fault; that there is none is not. */
function asFault(error: unknown): string[] {
  if (error instanceof StoreTrouble && error.code === 'damaged') return [error.what];
  throw error;
}
