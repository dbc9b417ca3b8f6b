import { parseArgs } from 'node:util';
import { StoreTrouble } from '../store/trouble.ts';
import { type Command, CommandTrouble, type Given, note, printable, say } from './command.ts';

/** Each is loaded only when it is asked for, so that help comes at once. */
const commands: Readonly<Record<string, { summary: string; load(): Promise<Command> }>> = {
  start: {
    summary: 'serve your store, the dashboard and the extension',
    load: async () => (await import('./start.ts')).start,
  },
  demo: {
    summary: 'serve a finished season of an invented athlete, in a store of its own',
    load: async () => (await import('./demo.ts')).demo,
  },
  pair: {
    summary: 'make a code that pairs a browser',
    load: async () => (await import('./pair.ts')).pair,
  },
  devices: {
    summary: 'list paired devices, or let one go',
    load: async () => (await import('./devices.ts')).devices,
  },
  export: {
    summary: 'write all records as plain text',
    load: async () => (await import('./export.ts')).exportCommand,
  },
  import: {
    summary: 'fill an empty store from an export',
    load: async () => (await import('./import.ts')).importCommand,
  },
  backup: {
    summary: 'copy the store into one file',
    load: async () => (await import('./backup.ts')).backup,
  },
  restore: {
    summary: 'look at a backup, or put it in place',
    load: async () => (await import('./restore.ts')).restore,
  },
  verify: {
    summary: 'hold every row against its checksum',
    load: async () => (await import('./verify.ts')).verify,
  },
  service: {
    summary: 'make the daemon a service that starts with your session',
    load: async () => (await import('./service.ts')).service,
  },
  doctor: {
    summary: 'look for trouble, and say the mend',
    load: async () => (await import('./doctor.ts')).doctor,
  },
};

/** Runs what was typed after `platewright`, and returns the exit code: 0 done, 1 could not be done, 2 not understood. */
export async function runCommandLine(typed: readonly string[]): Promise<number> {
  // Files of a store are for its user alone.
  process.umask(0o077);
  try {
    await run(typed);
    return 0;
  } catch (error) {
    if (error instanceof CommandTrouble) note(linesOf(error));
    else note(`This should not happen:\n${error instanceof Error ? error.stack : String(error)}`);
    return error instanceof CommandTrouble ? error.exitCode : 1;
  }
}

/** What a file of someone else made wrong may be quoted in it. */
function linesOf({ message }: Error): string {
  return message.split('\n').map(printable).join('\n');
}

async function run(typed: readonly string[]): Promise<void> {
  const [name, ...rest] = typed;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') return say(overview());
  if (!Object.hasOwn(commands, name)) {
    throw new CommandTrouble(`There is no command “${name}”. npx platewright --help lists them.`, 2);
  }
  const command = await commands[name]?.load();
  if (command === undefined) return;
  const given = parse(command, rest);
  if (given.values.help === true) say(helpOf(command));
  else await command.run(given).catch((error: unknown) => told(error, command, given));
}

/** Trouble with a store, in words that lead to that very store. */
async function told(error: unknown, command: Command, given: Given): Promise<never> {
  if (!(error instanceof StoreTrouble)) throw error;
  const { optionsOf } = await import('./options-of.ts');
  throw new CommandTrouble(error.messageWith(optionsOf(command, given)));
}

function parse(command: Command, args: string[]): Given {
  const options = { ...command.options, help: { type: 'boolean', short: 'h' } } as const;
  try {
    const { values, positionals } = parseArgs({ args, options, allowPositionals: true, strict: true });
    if (positionals.length <= command.mostOperands) return { values, positionals };
  } catch (error) {
    const [reason] = error instanceof Error ? error.message.split('. ') : [];
    throw new CommandTrouble(`${reason}\n${usage(command)}`, 2);
  }
  throw new CommandTrouble(`There is too much on this line.\n${usage(command)}`, 2);
}

function usage({ name, operands, options }: Command): string {
  const names = Object.entries(options).map(([option, { type }]) =>
    type === 'boolean' ? `[--${option}]` : `[--${option} ${option.toUpperCase()}]`,
  );
  return ['npx platewright', name, operands, ...names].filter((word) => word !== '').join(' ');
}

function helpOf(command: Command): string {
  return `${usage(command)}\n\n${command.help}`;
}

function overview(): string {
  const rows = Object.entries(commands).map(([name, { summary }]) => `  ${name.padEnd(9)}${summary}`);
  return `Platewright shapes what is on the plate: it keeps your food and body records and makes the weekly call.

${rows.join('\n')}

npx platewright COMMAND --help says more. Begin with: npx platewright demo`;
}
