import { once } from 'node:events';
import { afterEach, describe, expect, it } from 'vitest';
import { createApp } from '../../daemon/src/server/app.ts';
import { createLog } from '../../daemon/src/server/log.ts';
import { ask, hangUp } from '../server/ask.ts';
import { athleteFields, phaseFields } from '../server/fields.ts';
import { useHouse } from '../server/house.ts';
import { rawly } from '../server/raw.ts';
import { type Daemon, pairExtension } from './daemon-process.ts';
import { useMachine } from './machine.ts';

/** A line of the log: an instant in UTC, a level, an event, and facts that are words of the program or numbers. */
const LINE =
  /^(?<at>\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z) (?<level>error|warn|info|debug) (?<event>[a-z-]+)(?<facts>( [a-z]+=[\w./:*<-]+)*)$/;

interface Line {
  level: string;
  event: string;
  facts: Record<string, string>;
}

function read(line: string): Line {
  const { at = '', level = '', event = '', facts = '' } = LINE.exec(line)?.groups ?? {};
  expect(new Date(at).toISOString(), line).toBe(at);
  const pairs = facts.split(' ').filter((fact) => fact !== '');
  return { level, event, facts: Object.fromEntries(pairs.map((fact) => fact.split('='))) };
}

const machine = useMachine();
let daemon: Daemon;

async function start(...args: string[]): Promise<{ port: number; host: string; origin: string }> {
  daemon = await machine().start(['start', '--port', '0', ...args]);
  const { host, port } = new URL(daemon.url);
  return { port: Number(port), host, origin: daemon.url };
}

/** Ends the daemon, and gives what it logged, without what it says to the person at its terminal. */
async function ended(): Promise<Line[]> {
  const closed = daemon.child.stderr === null ? null : once(daemon.child.stderr, 'close');
  await daemon.stop('SIGTERM');
  await closed;
  const lines = daemon.notes.join('').trimEnd().split('\n');
  return lines.filter((line) => !/^(Link and code are good once|Stopping…$)/.test(line)).map(read);
}

const json = { 'content-type': 'application/json' };
const fetched = { 'sec-fetch-site': 'same-origin' };

describe('the log of a running daemon', () => {
  afterEach(hangUp);

  it('has a line for each pairing, good or wrong, and for each key that was taken back', async () => {
    const { port, host, origin } = await start();
    const headers = await pairExtension(daemon);
    const { device } = JSON.parse(
      (await ask({ port, path: '/v1/session', headers: { host, ...headers } })).text,
    );
    const pair = (code: string) =>
      ask({
        ...{ port, method: 'POST', path: '/v1/pair', headers: { host, origin, ...fetched, ...json } },
        body: JSON.stringify({ code, name: 'Page', kind: 'dashboard' }),
      });
    expect((await pair('0000-0000')).status).toBe(403);
    for (let i = 0; i < 10; i++) await pair('0000-0000');
    expect((await pair('0000-0000')).status).toBe(429);
    await ask({ port, method: 'DELETE', path: `/v1/devices/${device}`, headers: { host, ...headers } });
    const lines = await ended();
    expect(lines).toContainEqual({ level: 'warn', event: 'paired', facts: { device, kind: 'extension' } });
    expect(lines).toContainEqual({ level: 'warn', event: 'key-taken-back', facts: { device, by: device } });
    const tries = lines.filter(({ facts }) => facts.route === '/v1/pair').map(({ facts }) => facts.status);
    expect(tries).toEqual([...Array.from({ length: 10 }, () => '403'), '429', '429']);
  });

  it('has a line for a key that the command line took back, and ends its streams', async () => {
    const { port, host } = await start();
    const headers = await pairExtension(daemon);
    const said = { host, ...headers };
    const { device } = JSON.parse((await ask({ port, path: '/v1/session', headers: said })).text);
    const stream = await fetch(`${daemon.url}/v1/events`, { headers });
    expect(machine().run('devices', 'revoke', device).status).toBe(0);
    expect(await stream.text()).toContain('changed');
    // Seen once, told once.
    expect(machine().run('devices', 'revoke', device).status).toBe(0);
    const told = (await ended()).filter(({ event }) => event === 'key-taken-back');
    expect(told).toEqual([
      { level: 'warn', event: 'key-taken-back', facts: { device, by: 'another-process' } },
    ]);
  });

  it('has a line for what was refused: rights, a foreign host, a foreign origin, no key', async () => {
    const { port, host } = await start();
    const owner = await pairExtension(daemon);
    const edits = [{ kind: 'athlete', athlete: 'ann', fields: { ...athleteFields, name: 'Ann' } }];
    const body = JSON.stringify({ edits });
    await ask({ port, method: 'POST', path: '/v1/records', headers: { host, ...owner }, body });
    const code = machine().run('pair', '--read-only').stdout.trim();
    const reader = await pairExtension({ ...daemon, code });
    const asked = { port, method: 'POST', path: '/v1/records', body };
    expect((await ask({ ...asked, headers: { host, ...reader } })).status).toBe(403);
    expect((await ask({ ...asked, headers: { host, ...json, origin: 'http://evil.test' } })).status).toBe(
      403,
    );
    expect((await ask({ port, path: '/v1/session', headers: { host: 'evil.test' } })).status).toBe(421);
    expect((await ask({ port, path: '/v1/session', headers: { host } })).status).toBe(401);
    const refusals = (await ended()).filter(({ event }) => event === 'request').map(({ facts }) => facts);
    expect(refusals.map(({ status, route }) => `${status} ${route}`)).toEqual([
      '403 /v1/records',
      '403 /v1/records',
      '421 /v1/session',
      '401 /v1/session',
    ]);
    expect(refusals.map(({ device }) => device !== undefined)).toEqual([true, false, false, false]);
  });

  it('has no word of records, names, tokens, codes or addresses in a whole run, whatever is sent', async () => {
    const { port, host, origin } = await start('--log-level', 'debug');
    const headers = await pairExtension(daemon);
    const said = { host, ...headers };
    const edits = [
      { kind: 'athlete', athlete: 'ann', fields: { ...athleteFields, name: 'CANARY' } },
      { kind: 'phase', athlete: 'ann', id: 'p', fields: phaseFields },
      { kind: 'day', athlete: 'ann', id: 'CANARY-day', fields: { date: '2026-03-02', note: 'CANARY' } },
    ];
    const body = JSON.stringify({ edits });
    expect((await ask({ port, method: 'POST', path: '/v1/records', headers: said, body })).status).toBe(200);
    const paths = [
      ...[
        '/v1/records?kind=CANARY',
        '/v1/records/CANARY',
        '/v1/devices/CANARY',
        '/CANARY',
        '/v1/views/day?date=CANARY',
      ],
      ...[
        '/v1/session?token=CANARY',
        '/v1/devices/a%0a2026-01-01T00:00:00.000Z%20warn%20CANARY',
        '/%1b[2JCANARY',
      ],
      ...[
        '/v1/records',
        '/v1/pull',
        '/v1/views/day?date=2026-03-02',
        '/v1/views/body',
        '/v1/views/week',
        '/v1/devices',
      ],
    ];
    for (const path of paths) {
      await ask({ port, path, headers: { ...said, 'user-agent': 'CANARY', referer: 'CANARY' } });
      await ask({ port, method: 'DELETE', path, headers: { ...said, 'x-forwarded-for': 'CANARY' } });
    }
    const pairing = { code: 'CANARY', name: 'CANARY\nCANARY', kind: 'dashboard' };
    await ask({
      ...{ port, method: 'POST', path: '/v1/pair', headers: { host, origin, ...fetched, ...json } },
      body: JSON.stringify(pairing),
    });
    await ask({ port, method: 'POST', path: '/v1/push', headers: said, body: '{"CANARY' });
    await rawly(port, 'CANARY / HTTP/1.1\r\n\r\n', `GET /CANARY HTTP/1.1\r\nHost: CANARY\r\n\r\n`);
    const lines = await ended();
    expect(lines.length).toBeGreaterThan(2 * paths.length);
    const all = daemon.notes.join('');
    const token = headers.authorization?.replace('Bearer ', '') ?? '';
    for (const secret of ['CANARY', token, daemon.code]) expect(all.includes(secret), secret).toBe(false);
    expect(all.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
    for (const { event, facts } of lines)
      if (event === 'request') expect(facts.status).toMatch(/^[2-5]\d\d$/);
  });
});

describe('a fault', () => {
  const house = useHouse();

  it('leaves a line with its place in the program, and only there', async () => {
    const lines: string[] = [];
    const app = createApp({
      ...house().deps,
      log: createLog(
        'warn',
        (line) => lines.push(line),
        () => 0,
      ),
      writer: {
        push: async () => [],
        edit: async () => Promise.reject(new TypeError('CANARY\nCANARY')),
      },
    });
    const headers = { ...(await house().extension()), host: '127.0.0.1:8787' };
    const edits = [{ kind: 'athlete', athlete: 'ann', fields: { ...athleteFields, name: 'Ann' } }];
    const asked = { method: 'POST', headers: { ...headers, ...json }, body: JSON.stringify({ edits }) };
    const answer = await app.request('http://127.0.0.1:8787/v1/records', asked, {});
    expect(answer.status).toBe(500);
    expect(await answer.text()).not.toMatch(/CANARY|\.ts/);
    const fault = lines.map(read).find(({ event }) => event === 'fault');
    expect(fault).toMatchObject({ level: 'error', facts: { kind: 'TypeError' } });
    expect(fault?.facts.at).toMatch(/^logs\.test\.ts:\d+/);
    expect(lines.join('')).not.toMatch(/CANARY/);
  });
});
