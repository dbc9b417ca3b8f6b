import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { type Command, CommandTrouble, type Given, note, say } from './command.ts';
import { configFile } from './config-file.ts';
import { LAUNCHD_LABEL, launchdPlist } from './launchd-plist.ts';
import { networkOptions, networkSettings } from './network-settings.ts';
import { NODE_FLAGS } from './node-flags.ts';
import { dataOption, environment, optionsFor, settings, text } from './settings.ts';
import { type ServiceCommand, systemdUnit } from './systemd-unit.ts';
import { xdg } from './xdg.ts';

/** Options that name a file or folder, which a service sees from elsewhere. */
const PATHS = new Set(['data', 'backups', 'cert', 'key']);

const one = { type: 'string' } as const;

const DAEMON = resolve(import.meta.dirname, '../../..', 'daemon');
/** As it was built, which starts quicker; else as it is written. */
const MAIN = [join(DAEMON, 'dist/cli/main.cjs'), join(DAEMON, 'src/cli/main.ts')];

export const service: Command = {
  name: 'service',
  operands: '[install]',
  mostOperands: 1,
  options: { ...dataOption, backups: one, port: one, ...networkOptions, manager: one },
  help: `  npx platewright service
  npx platewright service install
  npx platewright service install --lan

Prints what makes the daemon a service of yours: a systemd user unit, or on a Mac a launchd agent; --manager systemd or
launchd names one. It starts with your session and again after a fault, and may do no more than the daemon needs. The
options of start go into it, but --store, which the config file holds, and --log-level, which is info. install writes it
where it belongs, and says how to turn it on.`,
  async run(given) {
    const [action] = given.positionals;
    if (action !== undefined && action !== 'install') {
      throw new CommandTrouble('It is npx platewright service, or npx platewright service install.', 2);
    }
    const command = commandOf(given);
    const { path, content, turnOn } = serviceFile(managerOf(given), command);
    if (action === undefined) return say(content.trimEnd());
    // A unit does not start when a folder that it may write to is not there.
    for (const folder of command.writes) mkdirSync(folder, { recursive: true, mode: 0o700 });
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    say(path);
    note(`Turn it on with: ${turnOn}
Then pair a browser with the code that npx platewright pair${optionsFor(settings(given))} prints.`);
  },
};

function serviceFile(manager: 'systemd' | 'launchd', command: ServiceCommand) {
  if (manager === 'launchd') {
    const path = join(homedir(), 'Library/LaunchAgents', `${LAUNCHD_LABEL}.plist`);
    const content = launchdPlist(command, join(homedir(), 'Library/Logs'));
    return { path, content, turnOn: `launchctl bootstrap gui/$(id -u) '${path}'` };
  }
  const path = join(xdg('XDG_CONFIG_HOME', '.config'), 'systemd/user/platewright.service');
  // One that runs already would go on as it was, if it were only enabled.
  const turnOn =
    'systemctl --user daemon-reload && systemctl --user enable platewright && systemctl --user restart platewright';
  return { path, content: systemdUnit(command), turnOn };
}

function managerOf({ values }: Given): 'systemd' | 'launchd' {
  const named = text(values.manager);
  if (named === 'systemd' || named === 'launchd') return named;
  if (named === undefined) return process.platform === 'darwin' ? 'launchd' : 'systemd';
  throw new CommandTrouble(`A service manager is systemd or launchd, not “${named}”.`, 2);
}

/** The command that starts the daemon with what was given here. */
function commandOf(given: Given): ServiceCommand {
  const { data, store, backups } = settings(given);
  const { lan } = networkSettings(given);
  // It would keep other records, in a file.
  if (store !== configFile().store && store !== null)
    throw new CommandTrouble(
      'A service does not see PLATEWRIGHT_STORE. Name the address as store in config.json, which others can’t read as they can a unit.',
    );
  const { manager: _, ...kept } = given.values;
  const options = Object.entries<unknown>({
    // A service does not see the environment of this shell.
    port: environment('PLATEWRIGHT_PORT'),
    ...{ ...kept, data, backups, 'log-level': 'info' },
  }).flatMap(([name, value]) => {
    if (value === undefined) return [];
    if (typeof value === 'boolean') return [`--${name}`];
    return [value]
      .flat()
      .flatMap((word) => [`--${name}`, PATHS.has(name) ? resolve(String(word)) : String(word)]);
  });
  return {
    command: [
      process.execPath,
      ...NODE_FLAGS,
      MAIN.find((path) => existsSync(path)) ?? '',
      'start',
      ...options,
    ],
    writes: [...new Set([data, backups, join(xdg('XDG_CACHE_HOME', '.cache'), 'platewright')])],
    reach: store !== null ? 'anyone' : lan !== null ? 'private' : 'loopback',
  };
}
