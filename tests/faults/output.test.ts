import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { resolve } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { ask, hangUp } from '../server/ask.ts';
import { type Daemon, startDaemon, temporaryFolder } from './daemon-process.ts';

let folder: ReturnType<typeof temporaryFolder>;
let daemon: Daemon | null = null;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(async () => {
  hangUp();
  await daemon?.stop('SIGKILL');
  daemon = null;
  folder.remove();
});

it('a daemon goes on when nobody reads its log any more', async () => {
  daemon = await startDaemon(folder.path);
  daemon.child.stderr?.destroy();
  daemon.child.stdout?.destroy();
  const port = Number(new URL(daemon.url).port);
  const asked = (host: string) => ask({ port, path: '/v1/health', headers: { host } });
  // Each refusal is a line of the log.
  for (let i = 0; i < 3; i += 1) expect((await asked('evil.test')).status).toBe(421);
  expect((await asked(`127.0.0.1:${port}`)).status).toBe(200);
  expect(await daemon.stop('SIGTERM')).toBe(0);
});

it('a command whose output nobody takes ends with exit code 1, and no stack', async () => {
  const main = resolve(import.meta.dirname, '../../daemon/src/cli/main.ts');
  const child = spawn(process.execPath, [main, '--help'], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  child.stdout.destroy();
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (chunk: string) => {
    said += chunk;
  });
  await once(child, 'close');
  expect(child.exitCode).toBe(1);
  expect(said).not.toMatch(/EPIPE|at /);
});
