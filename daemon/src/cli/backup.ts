import { dirname, resolve } from 'node:path';
import { makeBackup } from '../keep/backup.ts';
import { bytesFolder, copyBytes } from '../keep/bytes.ts';
import { openStore } from '../store/open.ts';
import { type Command, say } from './command.ts';
import { settings, storeOptions } from './settings.ts';

export const backup: Command = {
  name: 'backup',
  operands: '[FILE]',
  mostOperands: 1,
  options: storeOptions,
  help: `  npx platewright backup
  npx platewright backup /mnt/disk/platewright.sqlite

Prints where the copy is: in the folder backups beside the store unless FILE or --backups names a place. Photos go into the
folder bytes beside it, which all backups there share: keep the two together. The daemon may be running; it makes one each day by itself. Copying the store's files by hand can give a broken copy; this can't.`,
  async run(given) {
    const { data, store: address, backups } = settings(given);
    const [file] = given.positionals;
    const store = await openStore({ data, store: address }, 'guest');
    try {
      if (file === undefined) return say(await makeBackup({ store, data, backups }, Date.now()));
      await store.backup(resolve(file));
      await copyBytes(bytesFolder(data), bytesFolder(dirname(resolve(file))));
      say(resolve(file));
    } finally {
      await store.close();
    }
  },
};
