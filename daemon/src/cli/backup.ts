import { resolve } from 'node:path';
import { backupPath } from '../keep/backup.ts';
import { openSqliteStore } from '../store/sqlite.ts';
import { type Command, say } from './command.ts';
import { dataOption, settings } from './settings.ts';

export const backup: Command = {
  name: 'backup',
  operands: '[FILE]',
  mostOperands: 1,
  options: dataOption,
  help: `  platewright backup
  platewright backup /mnt/disk/platewright.sqlite

Prints where the copy is: in the folder backups beside the store unless FILE names a place. The daemon may be running.
Copying the store's files by hand can give a broken copy; this can't.`,
  async run(given) {
    const { data } = settings(given);
    const [file] = given.positionals;
    const path = file === undefined ? backupPath(data, Date.now()) : resolve(file);
    const store = openSqliteStore(data, 'guest');
    try {
      await store.backup(path);
      say(path);
    } finally {
      await store.close();
    }
  },
};
