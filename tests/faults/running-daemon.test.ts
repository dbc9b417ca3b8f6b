import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { pairExtension, platewright } from './daemon-process.ts';
import { useMachine } from './machine.ts';

const machine = useMachine();

const run = (...args: string[]) => machine().run(...args);

describe('a running daemon', () => {
  it('says in three lines what to do next', async () => {
    const daemon = await machine().start();
    const [page, extension, look] = daemon.lines;
    expect(page).toMatch(/^1\. .*http:\/\/127\.0\.0\.1:\d+\/#pair=[0-9A-Z]{4}-[0-9A-Z]{4}$/);
    expect(extension).toMatch(/^2\. .*extension.*typing 127\.0\.0\.1:\d+ [0-9A-Z]{4}-[0-9A-Z]{4}$/);
    expect(look).toMatch(/^3\. .*--demo/);
  });

  it('stops in order with a stream open, and keeps data and devices over a restart', async () => {
    let daemon = await machine().start();
    const headers = await pairExtension(daemon);
    const stream = await fetch(`${daemon.url}/v1/events`, { headers });
    const reader = stream.body?.getReader();
    await reader?.read();
    expect(await daemon.stop('SIGTERM')).toBe(0);
    await expect(reader?.read().then(({ done }) => done || Promise.reject(new Error('open')))).resolves.toBe(
      true,
    );
    daemon = await machine().start();
    expect((await fetch(`${daemon.url}/v1/session`, { headers })).status).toBe(200);
  });

  it('stops in order after it cut off a body that was too large', async () => {
    const daemon = await machine().start();
    const headers = { origin: 'chrome-extension://abc', 'content-type': 'application/json' };
    const large = new ReadableStream({
      pull: (stream) => stream.enqueue(new Uint8Array(1024 * 1024).fill(0x20)),
    });
    const init = { method: 'POST', headers, body: large, duplex: 'half' };
    await fetch(`${daemon.url}/v1/pair`, init).then(
      ({ status }) => expect(status).toBe(413),
      () => undefined,
    );
    expect(await daemon.stop('SIGTERM')).toBe(0);
  });

  it('hears of codes and devices that were let go from another process', async () => {
    const daemon = await machine().start();
    const code = run('pair').stdout.trim();
    expect(code).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/);
    const headers = await pairExtension({ ...daemon, code });
    // The commands hold up this process for longer than a daemon keeps an idle connection, which would then be dead.
    const said = { headers: { ...headers, connection: 'close' } };
    const session = () => fetch(`${daemon.url}/v1/session`, said);
    expect((await session()).status).toBe(200);
    const [id = ''] = run('devices').stdout.split('\t');
    expect(run('devices', 'revoke', 'nobody').status).toBe(1);
    expect(run('devices', 'revoke', id.slice(0, 12)).status).toBe(0);
    expect((await session()).status).toBe(401);
    expect(run('devices').stdout).toMatch(/revoked/);
  });

  it('is looked at, copied and exported while it runs; import fills an empty folder', async () => {
    const daemon = await machine().start();
    const headers = await pairExtension(daemon);
    const fields = { date: '2026-03-02', note: 'hello' };
    const clock = '000000000001-0000-phone';
    const change = { id: 'c', athlete: 'ann', device: 'phone', clock, kind: 'day', record: 'd', fields };
    await fetch(`${daemon.url}/v1/push`, {
      method: 'POST',
      headers,
      body: JSON.stringify({ changes: [change] }),
    });

    const ill = run('doctor');
    expect(ill.status).toBe(1);
    expect(ill.stdout).toMatch(/good {2}store: 1 changes, all sound/);
    expect(ill.stdout).toMatch(/mend {2}backup: there is none/);
    const backup = run('backup');
    expect(backup.stdout.trim()).toMatch(/backups.platewright-.*Z\.sqlite$/);
    expect(run('backup', backup.stdout.trim()).stderr).toMatch(/there already/);
    expect(run('doctor').status).toBe(0);

    const archive = run('export').stdout;
    expect(archive.split('\n')).toHaveLength(3);
    const file = join(machine().folder, 'records.jsonl');
    expect(run('export', file).status).toBe(0);
    expect(run('export', file).stderr).toMatch(/there already/);
    const other = ['--data', join(machine().folder, 'other')];
    expect(run('import', ...other, join(machine().folder, 'missing')).stderr).toMatch(/can’t be read/);
    expect(platewright(machine().folder, ['import', ...other], 'nonsense').stderr).toMatch(
      /Line 1 .*Nothing was imported/,
    );
    expect(run('import', ...other, file).stderr).toMatch(/1 records were imported/);
    expect(run('export', ...other).stdout).toBe(archive);
    expect(run('import', ...other, file).stderr).toMatch(/has records already/);
  });

  it('shows a demo season in a store of its own', async () => {
    let daemon = await machine().start(['demo', '--port', '0']);
    const headers = await pairExtension(daemon);
    const session = await (await fetch(`${daemon.url}/v1/session`, { headers })).json();
    expect(session.demo).toBe(true);
    expect(session.athletes).toHaveLength(1);
    const week = await (await fetch(`${daemon.url}/v1/views/week`, { headers })).json();
    expect(week.call).not.toBeNull();
    await daemon.stop('SIGTERM');
    daemon = await machine().start(['demo', '--port', '0']);
    expect((await fetch(`${daemon.url}/v1/session`, { headers })).status).toBe(200);
    expect(run('devices').stderr).toMatch(/no store/);
  });

  it.each([
    ['Pacific/Kiritimati', 'Pacific/Kiritimati'],
    ['Nowhere/None', 'UTC'],
  ])('shows a demo season whose athlete lives by the clock of a machine in %s', async (zone, timeZone) => {
    vi.stubEnv('TZ', zone);
    const daemon = await machine().start(['demo', '--port', '0']);
    vi.unstubAllEnvs();
    const headers = await pairExtension(daemon);
    const plan = await (await fetch(`${daemon.url}/v1/views/plan`, { headers })).json();
    expect(plan.athlete.timeZone).toBe(timeZone);
    const day = await (await fetch(`${daemon.url}/v1/views/day`, { headers })).json();
    expect(day.meals[2].entries).not.toEqual([]);
  });

  it.each([
    ['dashboard', true],
    ['extension', false],
  ] as const)('makes an old demo season anew while only a %s is paired: %s', async (kind, renewed) => {
    const data = join(machine().folder, 'data/platewright-demo');
    let daemon = await machine().start(['demo', '--port', '0']);
    await daemon.stop('SIGTERM');
    const old = openSqliteStore(data, 'owner');
    await old.putSetting('demo', '2020-01-01');
    const device = {
      ...{ id: 'd', name: 'D', kind, origin: null, tokenHash: 'h' },
      pairedAt: 1,
      lastSeenAt: null,
      revokedAt: null,
      rights: { athlete: null, access: 'write' as const },
    };
    await old.putDevice(device);
    await old.close();
    daemon = await machine().start(['demo', '--port', '0']);
    await daemon.stop('SIGTERM');
    const store = openSqliteStore(data, 'owner');
    expect((await store.setting('demo')) !== '2020-01-01').toBe(renewed);
    expect(store.id !== old.id).toBe(renewed);
    expect(await store.devices()).toEqual([device]);
    expect(await store.records({ kind: 'weekly-call' })).not.toEqual([]);
    await store.close();
  });

  it('never fills a store of one’s own with a demo', async () => {
    const daemon = await machine().start();
    const headers = await pairExtension(daemon);
    const clock = '000000000001-0000-phone';
    const change = { id: 'c', athlete: 'ann', device: 'phone', clock, kind: 'day', record: 'd', fields: {} };
    await fetch(`${daemon.url}/v1/push`, {
      method: 'POST',
      headers,
      body: JSON.stringify({ changes: [change] }),
    });
    await daemon.stop('SIGTERM');
    const { status, stderr } = run('demo', '--port', '0', '--data', machine().data);
    expect(status).toBe(1);
    expect(stderr).toMatch(/records of your own/);
  });
});
