import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join, resolve } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, expect, it } from 'vitest';
import { ask, hangUp } from '../server/ask.ts';
import { platewright } from './daemon-process.ts';
import { useMachine } from './machine.ts';

const machine = useMachine();
afterEach(hangUp);

it('a daemon goes on when nobody reads its log any more', async () => {
  const daemon = await machine().start();
  daemon.child.stderr?.destroy();
  daemon.child.stdout?.destroy();
  const port = Number(new URL(daemon.url).port);
  const asked = (host: string) => ask({ port, path: '/v1/health', headers: { host } });
  // Each refusal is a line of the log.
  for (let i = 0; i < 3; i += 1) expect((await asked('evil.test')).status).toBe(421);
  expect((await asked(`127.0.0.1:${port}`)).status).toBe(200);
  expect(await daemon.stop('SIGTERM')).toBe(0);
});

it('a planted archive or backup steers no terminal by the names in it', () => {
  const field = 'a\u001b]0;b\u0007';
  const record = { athlete: 'ann', id: 'd', kind: 'day', fields: { [field]: 1 }, clocks: {} };
  const head = { archive: 'platewright', version: 1, records: 1 };
  const archive = `${JSON.stringify(head)}\n${JSON.stringify(record)}\n`;
  const { status, stderr } = platewright(machine().folder, ['import'], archive);
  expect([status, stderr]).toEqual([1, expect.stringMatching(/the field a\ufffd\]0;b\ufffd has no clock/)]);

  const file = join(machine().folder, 'backup.sqlite');
  expect(machine().run('backup', file).status).toBe(0);
  const db = new DatabaseSync(file);
  const row = ['?', '?', '?', '?', '?'].join(', ');
  db.prepare(
    `INSERT INTO devices (id, name, kind, token_hash, paired_at, access, checksum) VALUES (${row}, 'write', x'00')`,
  ).run('a\u001b]0;b\u0007', 'A', 'dashboard', 'h', 1);
  db.close();
  const said = machine().run('verify', file).stdout;
  expect(said).toMatch(/device a\ufffd/);
  expect(said).not.toContain('\u001b');
  expect(machine().run('restore', file).stderr).toMatch(/is not sound \(device a\ufffd/);
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
