import { type ChildProcess, type ChildProcessByStdio, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { NODE_FLAGS } from '../../daemon/src/cli/node-flags.ts';
import { EXTENSION } from '../support/extension-origin.ts';

/** The sources, so that a test needs no build; DAEMON_MAIN names what was built instead, run as npm start does. */
function main(): string[] {
  const built = process.env.DAEMON_MAIN;
  const sources = resolve(import.meta.dirname, '../../daemon/src/cli/main.ts');
  return built === undefined ? [sources] : [...NODE_FLAGS, built];
}

/** Compiled modules outlast a test's folder, so that each start is as quick as a second start at home. */
const CACHE = resolve(import.meta.dirname, '../../node_modules/.cache');

function environment(folder: string): NodeJS.ProcessEnv {
  const [data, config] = [join(folder, 'data'), join(folder, 'config')];
  return { ...process.env, XDG_DATA_HOME: data, XDG_CONFIG_HOME: config, XDG_CACHE_HOME: CACHE };
}

/** Runs a command to its end. */
export function platewright(folder: string, args: readonly string[], input = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...main(), ...args], {
    env: environment(folder),
    encoding: 'utf8',
    input,
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status, stdout, stderr };
}

/** A daemon that runs. */
export interface Daemon {
  child: ChildProcess;
  url: string;
  /** Pairs an extension. */
  code: string;
  lines: readonly string[];
  /** What it wrote to its error output until now. */
  notes: readonly string[];
  stop(signal: NodeJS.Signals): Promise<number | null>;
}

/** Starts a daemon, and waits until it says what to do next; `under` is a program that runs it, with its arguments. */
export async function startDaemon(
  folder: string,
  args: readonly string[] = ['start', '--port', '0'],
  under: readonly string[] = [],
): Promise<Daemon> {
  const [program = process.execPath, ...before] = [...under, process.execPath];
  const child = spawn(program, [...before, ...main(), ...args], {
    env: environment(folder),
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const notes: string[] = [];
  child.stderr.setEncoding('utf8').on('data', (chunk: string) => notes.push(chunk));
  const lines = await firstLines(child, 3);
  const text = lines.join('\n');
  const url = /http:\/\/127\.0\.0\.1:\d+/.exec(text)?.[0];
  const code = /typing (?:\S+ )?(\w{4}-\w{4})/.exec(text)?.[1];
  if (url === undefined || code === undefined) {
    child.kill('SIGKILL');
    throw new Error(`the daemon did not start: ${text}${notes.join('')}`);
  }
  return {
    ...{ child, url, code, lines, notes },
    async stop(signal) {
      if (child.exitCode !== null || child.signalCode !== null) return child.exitCode;
      if (under.length === 0) child.kill(signal);
      else process.kill(childOf(child.pid ?? 0), signal);
      await once(child, 'exit');
      return child.exitCode;
    },
  };
}

/** The one process that another one runs. */
function childOf(pid: number): number {
  return Number(readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim());
}

/** Fewer when the process ends before. */
function firstLines(child: ChildProcessByStdio<null, Readable, Readable>, count: number): Promise<string[]> {
  const lines: string[] = [];
  return new Promise((resolve) => {
    child.once('close', () => resolve(lines));
    const reader = createInterface({ input: child.stdout });
    reader.on('line', (line) => {
      if (lines.push(line) < count) return;
      reader.close();
      resolve(lines);
    });
  });
}

/** Headers of an extension paired with a running daemon. */
export async function pairExtension({ url, code }: Daemon): Promise<Record<string, string>> {
  const response = await fetch(`${url}/v1/pair`, {
    method: 'POST',
    headers: { origin: EXTENSION, 'content-type': 'application/json' },
    body: JSON.stringify({ code, name: 'Test', kind: 'extension' }),
  });
  const { token } = await response.json();
  return { origin: EXTENSION, authorization: `Bearer ${token}`, 'content-type': 'application/json' };
}
