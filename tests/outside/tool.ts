import { spawn, spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';

const FOLDER = import.meta.dirname;

/** Installs the tools of this folder's own package.json unless they stand as its lock has them. */
export function installTools(): void {
  const mark = join(FOLDER, 'node_modules/.package-lock.json');
  const lock = statSync(join(FOLDER, 'package-lock.json')).mtimeMs;
  if (existsSync(mark) && statSync(mark).mtimeMs >= lock) return;
  console.log('Installing the outside tools…');
  const { status } = spawnSync('npm', ['ci'], { cwd: FOLDER, stdio: ['ignore', 'ignore', 'inherit'] });
  if (status !== 0) throw new Error('npm ci failed in tests/outside');
}

/** Runs a script of a tool to its end. */
export function runTool(script: string, args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(FOLDER, 'node_modules', script), ...args],
    {
      cwd: FOLDER,
      encoding: 'utf8',
      maxBuffer: 64 * 1024 * 1024,
    },
  );
  return { status, stdout, stderr };
}

/** Runs lines of JavaScript that may import the tools. */
export function runWithTools(code: string): string {
  const args = ['--input-type=module', '--eval', code];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd: FOLDER, encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  return stdout;
}

/** A tool that serves; resolves once its output has `ready` in it. */
export async function startTool(script: string, args: readonly string[], ready: RegExp) {
  const child = spawn(process.execPath, [join(FOLDER, 'node_modules', script), ...args], {
    cwd: FOLDER,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  await new Promise<void>((resolve, reject) => {
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (chunk: string) => {
        output += chunk;
        if (ready.test(output)) resolve();
      });
    }
    child.once('exit', () => reject(new Error(`${script} ended:\n${output}`)));
  });
  return { output: () => output, stop: () => child.kill('SIGKILL') };
}
