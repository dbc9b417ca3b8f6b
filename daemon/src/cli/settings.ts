import { join, resolve } from 'node:path';
import { backupFolder } from '../keep/backup.ts';
import { CommandTrouble, type Given } from './command.ts';
import { configFile } from './config-file.ts';
import { xdg } from './xdg.ts';

/** Where each listens unless told otherwise; all of them may run at the same time. */
export const PORTS = { own: 8787, demo: 8788, lan: 8789, tried: 8790 } as const;

export const dataOption = { data: { type: 'string' } } as const;
/** Where records are, and where their backups go. */
export const storeOptions = {
  ...dataOption,
  store: { type: 'string' },
  backups: { type: 'string' },
} as const;
export const serveOptions = { ...storeOptions, port: { type: 'string' } } as const;

interface Settings {
  /** Absolute. */
  data: string;
  port: number;
  /** Address of a PostgreSQL database; null for a file in `data`. */
  store: string | null;
  /** Folder of the backups, absolute. */
  backups: string;
}

/**
 * Settings of the athlete's own store: the command line over the environment over the config file over defaults. A store and
 * backups that are named for one folder are not those of another one that is named above them.
 */
export function settings({ values }: Given): Settings {
  const file = configFile();
  const typed = text(values.data);
  const shell = environment('PLATEWRIGHT_DATA');
  const shellData = shell === undefined ? usualFolder(file) : readFolder(shell);
  const data = typed === undefined ? shellData : readFolder(typed);
  const named = [
    { data, store: text(values.store), backups: text(values.backups) },
    {
      data: shellData,
      store: environment('PLATEWRIGHT_STORE'),
      backups: environment('PLATEWRIGHT_BACKUPS'),
    },
    { ...file, data: usualFolder(file) },
  ].filter((place) => place.data === data);
  const [store] = named.flatMap((place) => place.store ?? []);
  const [backups] = named.flatMap((place) => place.backups ?? []);
  const port = text(values.port) ?? environment('PLATEWRIGHT_PORT');
  return {
    data,
    port: port === undefined ? (file.port ?? PORTS.own) : readPort(port),
    store: store === undefined ? null : readAddress(store),
    backups: backups === undefined ? backupFolder(data) : readBackups(backups, data),
  };
}

/** Photos lie beside both, and those that only a backup still names would go with those of the store. */
function readBackups(typed: string, data: string): string {
  const folder = readFolder(typed);
  if (folder !== data) return folder;
  throw new CommandTrouble(`Backups need a folder of their own, not ${data}, where the records are.`, 2);
}

/** Settings of the demo: by flags only, so that a demo never lands in the athlete's own store. */
export function demoSettings({ values }: Given): Pick<Settings, 'data' | 'port'> {
  const port = text(values.port);
  return {
    data: readFolder(text(values.data) ?? dataHome('platewright-demo')),
    port: port === undefined ? PORTS.demo : readPort(port),
  };
}

/**
 * The options, with a blank before, that lead a command typed elsewhere to the same store; empty where it finds it without.
 * An environment may not be the same there, so only the config file and the usual folder count as known.
 */
export function optionsFor({ data, store }: Pick<Settings, 'data' | 'store'>): string {
  const file = configFile();
  const folder = data === usualFolder(file) ? '' : ` --data ${inShell(data)}`;
  // An address may hold a password, and what is said here may land in a log.
  const isUsual = folder === '' && store === file.store;
  return store === null || isUsual ? folder : `${folder} --store ADDRESS`;
}

function inShell(path: string): string {
  return /^[\w./-]+$/.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;
}

/** Of the store that commands without a flag find. */
function usualFolder({ data }: ReturnType<typeof configFile>): string {
  return resolve(data ?? dataHome('platewright'));
}

/** Absolute. Without a name it would be the folder one stands in, and a `~` that no shell replaced one in that. */
function readFolder(typed: string): string {
  if (typed !== '' && !/^~(\/|$)/.test(typed)) return resolve(typed);
  throw new CommandTrouble(`A folder is a path such as /home/ann/records, not “${typed}”.`, 2);
}

function readAddress(typed: string): string {
  if (/^postgres(ql)?:\/\//.test(typed)) return typed;
  throw new CommandTrouble(
    'A store is named like postgres://user@host/database. A folder is named with --data.',
    2,
  );
}

export function readPort(typed: string): number {
  const port = /^\d{1,5}$/.test(typed) ? Number(typed) : Number.NaN;
  if (port >= 0 && port <= 65535) return port;
  throw new CommandTrouble(`A port is a number from 0 to 65535, not “${typed}”.`, 2);
}

function dataHome(name: string): string {
  return join(xdg('XDG_DATA_HOME', '.local/share'), name);
}

/** A variable of the environment; undefined when it is not set, or empty, as scripts leave what they don't use. */
export function environment(name: string): string | undefined {
  return process.env[name] === '' ? undefined : process.env[name];
}

/** An option that takes one word; undefined when it was not given. */
export function text(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined;
}
