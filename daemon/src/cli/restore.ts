import { rmSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { stampOf } from '../keep/backup.ts';
import { bytesFolder, copyBytes } from '../keep/bytes.ts';
import { dropTries, newTry } from '../keep/tries.ts';
import { openSqliteStore } from '../store/sqlite.ts';
import { replaceStore, unpackBackup } from '../store/sqlite-restore.ts';
import { type Command, CommandTrouble, note, say } from './command.ts';
import { loopbackOnly } from './network-settings.ts';
import { runDaemon } from './run-daemon.ts';
import { optionsFor, PORTS, serveOptions, settings } from './settings.ts';

export const restore: Command = {
  name: 'restore',
  operands: 'FILE',
  mostOperands: 1,
  options: { ...serveOptions, try: { type: 'boolean' } },
  help: `  npx platewright restore FILE --try
  npx platewright restore FILE

With --try it only serves the backup, on port ${PORTS.tried} unless --port names another one, to be looked at beside the running
daemon; nothing of that is kept. Without, the daemon must be stopped: the backup is checked and takes the place of the
store, which is kept in the folder of the backups. When that is damaged, its changes since the backup are taken over as
far as they are sound. Devices stay paired, and keys taken back, as they were; where no store was that knows, all that
the backup has are let in, so look at the devices after it. They notice with their next message, and send again what it
lacks. With --store it fills an empty PostgreSQL database, whichever kind of store the backup is of.`,
  async run(given) {
    const [file] = given.positionals;
    if (file === undefined) throw new CommandTrouble('Name a backup: npx platewright restore FILE.', 2);
    const { data, store, backups, port } = settings({
      ...given,
      values: { ...given.values, port: given.values.port ?? String(PORTS.tried) },
    });
    if (given.values.try === true) return await look(resolve(file), data, port);
    const letIn = `Whom it lets in is listed by npx platewright devices${optionsFor({ data, store })}.`;
    if (store !== null) {
      await fill(resolve(file), data, store);
      return note(`The backup is in the database. ${letIn} Start the daemon with the same --store.`);
    }
    const kept = join(backups, `replaced-${stampOf(Date.now())}.sqlite`);
    const taken = await replaceStore(resolve(file), data, kept);
    await copyBytes(bytesFolder(dirname(resolve(file))), bytesFolder(data));
    say(join(data, 'store.sqlite'));
    if (taken > 0) note(`${taken} changes since then were still sound, and were taken over.`);
    note(
      `The backup is in place. What it replaced, if anything, is ${kept}. ${letIn} Start the daemon again.`,
    );
  },
};

async function fill(file: string, data: string, address: string): Promise<void> {
  const { fillDatabase } = await import('../store/postgres-restore.ts');
  await fillDatabase(file, address, data);
  await copyBytes(bytesFolder(dirname(file)), bytesFolder(data));
}

async function look(file: string, data: string, port: number): Promise<void> {
  dropTries(data, Date.now());
  const folder = newTry(data);
  try {
    await unpackBackup(file, folder);
    await copyBytes(bytesFolder(dirname(file)), bytesFolder(folder));
    await runDaemon(openSqliteStore(folder, 'owner'), {
      ...{ port, data: folder, network: loopbackOnly, options: optionsFor({ data: folder, store: null }) },
      lastLine: 'This is a backup; nothing of it is kept.',
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
