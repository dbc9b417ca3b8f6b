import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { nameOf } from '../../daemon/src/keep/bytes.ts';
import { picture } from '../server/pictures.ts';
import { pairExtension } from './daemon-process.ts';
import { useMachine } from './machine.ts';

const machine = useMachine();

const run = (...args: string[]) => machine().run(...args);
const PICTURE = picture('image/jpeg', 'of ann');
const NAME = nameOf(PICTURE);

it('photos go with every backup, are missed when they are gone, and come back with a restore', async () => {
  let daemon = await machine().start();
  const headers = await pairExtension(daemon);
  const address = () => `${daemon.url}/v1/photos/${NAME}?athlete=ann`;
  const sent = await fetch(address(), {
    ...{ method: 'PUT', headers: { ...headers, 'content-type': 'image/jpeg' } },
    body: new Uint8Array(PICTURE),
  });
  expect(sent.status).toBe(204);
  const fields = { date: '2026-03-02', sha256: NAME, mediaType: 'image/jpeg' };
  const body = JSON.stringify({ edits: [{ kind: 'photo', athlete: 'ann', id: 'p', fields }] });
  expect((await fetch(`${daemon.url}/v1/records`, { method: 'POST', headers, body })).status).toBe(200);

  const elsewhere = join(machine().folder, 'disk');
  mkdirSync(elsewhere);
  const file = join(elsewhere, 'mine.sqlite');
  expect(run('backup', file).status).toBe(0);
  expect(run('backup').status).toBe(0);
  for (const beside of [elsewhere, join(machine().data, 'backups')])
    expect(existsSync(join(beside, 'bytes', NAME.slice(0, 2), NAME))).toBe(true);
  expect(run('doctor').stdout).toMatch(/good {2}photos: 1, all sound/);
  expect(run('verify').status).toBe(0);
  expect(run('verify', file).status).toBe(0);

  rmSync(join(machine().data, 'bytes'), { recursive: true });
  expect((await fetch(address(), { headers })).status).toBe(404);
  const verified = run('verify');
  expect(verified.status).toBe(1);
  expect(verified.stdout).toBe('photo p of athlete ann: its file is missing\n');
  expect(verified.stderr).toMatch(/Copy into .*bytes/);
  expect(run('doctor').stdout).toMatch(/mend {2}photos: photo p of athlete ann: its file is missing/);

  await daemon.stop('SIGTERM');
  expect(run('restore', file).status).toBe(0);
  daemon = await machine().start();
  const again = await fetch(address(), { headers });
  expect(new Uint8Array(await again.arrayBuffer())).toEqual(PICTURE);
  rmSync(join(elsewhere, 'bytes'), { recursive: true });
  expect(run('verify', file).stdout).toMatch(/its file is missing/);
});
