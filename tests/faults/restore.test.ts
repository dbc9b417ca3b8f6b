import { readdirSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, it } from 'vitest';
import { pairExtension } from './daemon-process.ts';
import { weighIns } from './load.ts';
import { useMachine } from './machine.ts';

const machine = useMachine();

const run = (...args: string[]) => machine().run(...args);
const data = () => machine().data;

it('a damaged store is named, looked at, and put right from a backup', async () => {
  let daemon = await machine().start();
  const headers = await pairExtension(daemon);
  const push = (changes: unknown) =>
    fetch(`${daemon.url}/v1/push`, { method: 'POST', headers, body: JSON.stringify({ changes }) });
  expect((await push(weighIns('a', 20))).status).toBe(200);
  const backup = run('backup').stdout.trim();
  expect(run('verify').stderr).toMatch(/as it was written/);

  const tried = await machine().start(['restore', backup, '--try', '--port', '0']);
  const storeOf = async (url: string, headers: Record<string, string>) =>
    (await (await fetch(`${url}/v1/session`, { headers })).json()).store;
  const triedStore = await storeOf(tried.url, await pairExtension(tried));
  expect(triedStore).toMatch(/^\w+$/);
  expect(triedStore).not.toBe(await storeOf(daemon.url, headers));
  expect(await tried.stop('SIGTERM')).toBe(0);
  expect(readdirSync(join(data(), 'tries'))).toEqual([]);

  expect(run('restore', backup).stderr).toMatch(/Stop it, then restore/);
  await daemon.stop('SIGTERM');
  const db = new DatabaseSync(join(data(), 'store.sqlite'));
  db.exec(`UPDATE records SET fields = replace(fields, '80', '90') WHERE id = 'a-7';
    UPDATE head SET seq = 21`);
  db.close();
  const verified = run('verify');
  expect(verified.status).toBe(1);
  expect(verified.stdout).toMatch(/head of the change log/);
  expect(verified.stderr).toContain(`platewright restore '${backup}'`);

  const restored = run('restore', backup);
  expect(restored.status).toBe(0);
  expect(restored.stderr).toMatch(/lets in is listed by npx platewright devices\./);
  expect(run('verify').status).toBe(0);
  daemon = await machine().start();
  expect((await push(weighIns('a', 21))).status).toBe(200);
  await daemon.stop('SIGTERM');
  expect(run('export').stdout.split('\n').length).toBe(23);
});

it('nothing is kept of a backup that was looked at, though its process was killed', async () => {
  let daemon = await machine().start();
  const backup = run('backup').stdout.trim();
  const tries = join(data(), 'tries');
  const look = () => machine().start(['restore', backup, '--try', '--port', '0']);
  const age = () => {
    for (const name of readdirSync(tries)) utimesSync(join(tries, name), 0, 0);
  };
  // As when its terminal is closed.
  await (await look()).stop('SIGHUP');
  age();
  const running = await look();
  age();
  expect(readdirSync(tries)).toHaveLength(1);
  await daemon.stop('SIGTERM');
  daemon = await machine().start();
  expect(readdirSync(tries)).toHaveLength(1);
  await running.stop('SIGKILL');
  await daemon.stop('SIGTERM');
  daemon = await machine().start();
  expect(readdirSync(tries)).toEqual([]);
});

it('a store found damaged at the start is served to be read', async () => {
  const daemon = await machine().start();
  const headers = await pairExtension(daemon);
  const body = JSON.stringify({ changes: weighIns('a', 3) });
  await fetch(`${daemon.url}/v1/push`, { method: 'POST', headers, body });
  const backup = run('backup').stdout.trim();
  await daemon.stop('SIGTERM');
  const db = new DatabaseSync(join(data(), 'store.sqlite'));
  db.exec('UPDATE head SET clock = NULL');
  db.close();
  // It prints no link, because it pairs no one.
  await expect(machine().start(['start', '--port', '0'], ['timeout', '-s', 'TERM', '5'])).rejects.toThrow(
    new RegExp(`head of the change log[\\s\\S]*restore '${backup}'[\\s\\S]*served to be read`),
  );
});
