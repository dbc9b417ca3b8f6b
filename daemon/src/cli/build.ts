import { spawn } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { note } from './command.ts';

export interface Build {
  name: string;
  /** Files and folders it is made from, under the root. */
  sources: readonly string[];
  /** A file that every build writes. */
  result: string;
  /** A script, under the root, and its arguments. */
  command: readonly string[];
}

const NOT_SOURCES = new Set(['node_modules', 'dist']);

/** Runs the builds whose result is missing or older than a source, side by side. Returns the names of those that failed. */
export async function buildStale(root: string, builds: readonly Build[]): Promise<string[]> {
  const stale = builds.filter((build) => isStale(root, build));
  const done = await Promise.all(stale.map((build) => run(root, build)));
  return stale.filter((_, i) => done[i] !== true).map(({ name }) => name);
}

function isStale(root: string, { sources, result }: Build): boolean {
  const builtAt = statSync(join(root, result), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  return sources.some((source) => newestIn(join(root, source)) > builtAt);
}

/** When a file, or the newest one in a folder, was last changed, ms since 1970. Folders of results start with a dot. */
function newestIn(path: string): number {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (stats === undefined) return 0;
  if (!stats.isDirectory()) return stats.mtimeMs;
  return readdirSync(path)
    .filter((name) => !name.startsWith('.') && !NOT_SOURCES.has(name) && !name.endsWith('.tsbuildinfo'))
    .reduce((newest, name) => Math.max(newest, newestIn(join(path, name))), 0);
}

function run(root: string, { name, command }: Build): Promise<boolean> {
  note(`Building the ${name}…`);
  // Standard output belongs to the daemon's own three lines.
  const child = spawn(process.execPath, [...command], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
  return new Promise((resolve) => {
    child.once('error', () => resolve(false));
    child.once('exit', (code) => resolve(code === 0));
  });
}
