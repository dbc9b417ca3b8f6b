import { createServer } from 'node:net';
import { checkUp, type Finding } from '../keep/check-up.ts';
import { isServed } from '../store/sqlite.ts';
import { type Command, CommandTrouble, printable, say } from './command.ts';
import { optionsFor, serveOptions, settings } from './settings.ts';

export const doctor: Command = {
  name: 'doctor',
  operands: '',
  mostOperands: 0,
  options: serveOptions,
  help: `  npx platewright doctor

Looks at the folder, its permissions, the disk, every change, record and photo, the clock, backups and the port. Exit code 1
when something should be mended. The daemon may be running.`,
  async run(given) {
    const { data, port, store, backups } = settings(given);
    const looked = await checkUp({ data, store, backups, options: optionsFor({ data, store }) }, Date.now());
    const findings = [...looked, await portFinding(data, port)];
    for (const { about, state, mend } of findings)
      say(
        printable(
          `${mend === null ? 'good' : 'mend'}  ${about}: ${state}${mend === null ? '' : `. ${mend}`}`,
        ),
      );
    const bad = findings.filter(({ mend }) => mend !== null).length;
    if (bad > 0) throw new CommandTrouble(`${bad} of ${findings.length} need mending.`);
  },
};

async function portFinding(folder: string, port: number): Promise<Finding> {
  const about = 'port';
  if (isServed(folder)) return { about, state: 'the daemon runs', mend: null };
  const free = await new Promise<boolean>((resolve) => {
    const server = createServer();
    server.once('error', () => resolve(false));
    server.listen(port, '127.0.0.1', () => server.close(() => resolve(true)));
  });
  return free
    ? { about, state: `${port} is free`, mend: null }
    : { about, state: `${port} is taken by another program`, mend: 'Stop it, or start with another --port.' };
}
