import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { api, components } from '../../daemon/src/server/api.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { type Asked, ask, hangUp } from './ask.ts';
import { athleteFields, change } from './fields.ts';
import { operations } from './from-openapi.ts';
import { rawly, statusOf } from './raw.ts';
import { type Served, served } from './served.ts';

/** FUZZ_REQUESTS=100000 for the long run. */
const REQUESTS = Number(process.env.FUZZ_REQUESTS ?? 10_000);
const GARBAGE = Math.round(REQUESTS / 50);
const AT_ONCE = 24;
const SEED = Number(process.env.FUZZ_SEED ?? 1);

const STACK = /node_modules|\bat \S+ \(|\.ts:\d|TypeError|RangeError|SqliteError|\/home\/|\/work\//;

const FETCHED = { 'sec-fetch-site': 'same-origin' };

let daemon: Served;
let secrets: Record<string, string>[];
beforeAll(async () => {
  daemon = await served();
  const { store, port } = daemon;
  await store.append([change('a', 'athlete', 'ann', athleteFields)], (clock) => clock);
  const host = `127.0.0.1:${port}`;
  const origin = { extension: EXTENSION, dashboard: `http://${host}` };
  const pair = async (kind: 'extension' | 'dashboard') =>
    await ask({
      ...{ port, method: 'POST', path: '/v1/pair' },
      headers: { host, origin: origin[kind], ...FETCHED, 'content-type': 'application/json' },
      body: JSON.stringify({ code: await daemon.code(), name: 'Fuzz', kind }),
    });
  const { token } = JSON.parse((await pair('extension')).text);
  const cookie = (await pair('dashboard')).headers['set-cookie']?.[0]?.split(';')[0] ?? '';
  secrets = [
    { host, origin: EXTENSION, authorization: `Bearer ${token}` },
    { host, origin: origin.dashboard, ...FETCHED, cookie },
    { host, origin: origin.dashboard, ...FETCHED },
  ];
});
afterAll(async () => {
  hangUp();
  await daemon.stop();
});

/** Values that programs trip over. */
const nasty = fc.constantFrom<unknown>(
  ...[
    null,
    true,
    false,
    -1,
    0,
    1.5,
    1e308,
    -1e308,
    2 ** 53,
    5e-324,
    '',
    ' ',
    '\u0000',
    '\ud800',
    '\uffff',
    '‮abc',
  ],
  ...[
    'x'.repeat(5000),
    '__proto__',
    'constructor',
    "'; DROP TABLE changes; --",
    '<img src=x onerror=alert(1)>',
    '%00',
    '../../etc/passwd',
  ],
  ...['2026-13-45', '0000-00-00', '99999-01-01', 'NaN', 'Infinity', '1e999', '{{7*7}}'],
  ...[
    [],
    {},
    [[[[[[]]]]]],
    { __proto__: { x: 1 } },
    { length: 1e9 },
    { toString: 1 },
    { valueOf: null },
    Array.from({ length: 600 }, () => null),
  ],
);
const nastyText = nasty.map((value) => (typeof value === 'string' ? value : String(JSON.stringify(value))));

/** A value with one part of it replaced by something nasty, dropped, or moved. */
function spoil(value: unknown, path: readonly number[], by: unknown): unknown {
  const [first = 0, ...rest] = path;
  if (typeof value !== 'object' || value === null || path.length === 0) return by;
  const entries = Object.entries(value);
  const at = entries.length === 0 ? -1 : first % entries.length;
  if (at === -1) return by;
  const changed = entries.map(([key, part], i): [string, unknown] => [
    key,
    i === at ? spoil(part, rest, by) : part,
  ]);
  return Array.isArray(value) ? changed.map(([, part]) => part) : Object.fromEntries(changed);
}

/** Whether a body is one that the daemon should take, and might then act on. */
function fits(path: string, method: string, text: string): boolean {
  const name = api.find((route) => route.path === path && route.method.toUpperCase() === method)?.body;
  if (name === undefined || name === 'picture') return false;
  try {
    return components[name].safeParse(JSON.parse(text)).success;
  } catch {
    return false;
  }
}

const broken = fc.constantFrom<(text: string) => string>(
  (text) => text.slice(0, Math.floor(text.length / 2)),
  (text) => `${text}}`,
  (text) => `[${text}`,
  (text) => text.replaceAll('"', "'"),
  (text) => `\ufeff${text}\u0000`,
  () => '',
  () => '{"a":'.repeat(3000),
  () => '['.repeat(50_000),
  () => '{"__proto__":{"admin":true},"changes":1}',
);

type Malformed = Omit<Asked, 'port'>;

/** Malformed requests: each goes against the description in one way at least. */
const malformed: fc.Arbitrary<Malformed> = fc.oneof(
  ...operations().map((operation) => {
    const { method, path, body, parameters } = operation;
    const filled = path.replace('{id}', 'nobody').replace('{sha256}', 'a'.repeat(64));
    const shapes: fc.Arbitrary<Malformed>[] = [
      // Another method, a path that is none, a header that is none.
      fc
        .constantFrom('PUT', 'PATCH', 'TRACE', 'PROPFIND', 'OPTIONS')
        .map((other) => ({ method: other, path: filled })),
      nastyText.map((text) => ({ method, path: `${filled}/${encodeURIComponent(text.toWellFormed())}x` })),
      nastyText.map((text) => ({
        method: 'GET',
        path: '/v1/session',
        headers: { authorization: `Bearer ${encodeURIComponent(text.toWellFormed())}` },
      })),
      nastyText.map((text) => ({
        method: 'GET',
        // A stream has no end to wait for.
        path: path === '/v1/events' ? '/v1/health' : filled,
        headers: {
          cookie: encodeURIComponent(text.toWellFormed()),
          'platewright-protocol': encodeURIComponent(text.toWellFormed()).slice(0, 200),
        },
      })),
    ];
    if (parameters.length > 0) {
      shapes.push(
        fc.tuple(fc.constantFrom(...parameters), nastyText).map(([name, text]) => ({
          method,
          path: `${filled}?${name}=${encodeURIComponent(text.toWellFormed())}`,
        })),
        fc.tuple(fc.constantFrom(...parameters), nastyText).map(([name, text]) => ({
          method,
          path: `${filled}?${name}=1&${name}=${encodeURIComponent(text.toWellFormed()).slice(0, 2000)}&%zz=%`,
        })),
      );
    }
    if (method === 'PUT') {
      shapes.push(
        // Content is never that of the address.
        fc.uint8Array({ minLength: 0, maxLength: 300 }).map((bytes) => ({
          ...{ method, path: `${filled}?athlete=ann`, headers: { 'content-type': 'image/png' } },
          body: Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), bytes]),
        })),
      );
    }
    if (body !== null) {
      const json = { 'content-type': 'application/json' };
      const texts = fc
        .tuple(body, fc.array(fc.nat(20), { minLength: 0, maxLength: 6 }), nasty)
        .map(([value, at, by]) => JSON.stringify(spoil(value, at, by)) ?? '')
        .filter((text) => !fits(path, method, text));
      shapes.push(
        ...[texts, texts, texts].map((some) =>
          some.map((text) => ({ method, path, headers: json, body: text })),
        ),
        fc
          .tuple(body, broken)
          .map(([value, how]) => ({ method, path, headers: json, body: how(JSON.stringify(value)) }))
          .filter((asked) => !fits(path, method, asked.body)),
        fc
          .tuple(
            body,
            fc.constantFrom(
              'text/plain',
              'application/xml',
              'multipart/form-data; boundary=x',
              'application/json-patch+json',
            ),
          )
          .map(([value, type]) => ({
            method,
            path,
            headers: { 'content-type': type },
            body: JSON.stringify(value),
          })),
        fc
          .uint8Array({ minLength: 1, maxLength: 300 })
          .map((bytes) => ({ method, path, headers: json, body: bytes }))
          .filter(({ body: bytes }) => !fits(path, method, Buffer.from(bytes).toString())),
      );
    }
    return fc.oneof(...shapes);
  }),
);

/** All that the store holds, but for what a wrong code or a sight of a device is meant to change. */
async function state(): Promise<string> {
  const { store } = daemon;
  const devices = (await store.devices()).map(({ lastSeenAt: _, ...device }) => device);
  const seq = await store.lastSeq();
  return JSON.stringify([seq, await store.changesSince(0, 2000), await store.records({}), devices]);
}

it(`${REQUESTS} malformed requests: no 5xx, no stack, nothing changed`, async () => {
  const before = await state();
  const requests = fc.sample(malformed, { numRuns: REQUESTS, seed: SEED });
  const seen = new Map<number, number>();
  const one = async (asked: Malformed, i: number) => {
    const secret = secrets[i % secrets.length] ?? {};
    const told = await ask({ port: daemon.port, ...asked, headers: { ...secret, ...asked.headers } });
    seen.set(told.status, (seen.get(told.status) ?? 0) + 1);
    const where = `${told.status} ${asked.method} ${asked.path.slice(0, 200)} ${String(asked.body ?? '').slice(0, 300)}`;
    if (told.status >= 500 || STACK.test(told.text)) throw new Error(`${where}\n${told.text.slice(0, 500)}`);
    if (told.status >= 400 && told.status !== 421 && asked.method !== 'HEAD')
      expect(told.headers['content-type'], where).toBe('application/problem+json');
  };
  for (let at = 0; at < requests.length; at += AT_ONCE)
    await Promise.all(requests.slice(at, at + AT_ONCE).map((asked, i) => one(asked, at + i)));
  expect(await state()).toBe(before);
  for (const status of [400, 401, 404, 405, 415, 422])
    expect([status, seen.get(status) ?? 0]).not.toEqual([status, 0]);
  expect(await daemon.store.verify()).toEqual([]);
}, 600_000);

it(`${GARBAGE} pieces of garbage on the socket: the next request is answered`, async () => {
  const before = await state();
  const host = `127.0.0.1:${daemon.port}`;
  const good = `GET /v1/health HTTP/1.1\r\nHost: ${host}\r\n\r\n`;
  const starts = [
    good,
    'POST /v1/push HTTP/1.1\r\n',
    `POST /v1/pair HTTP/1.1\r\nHost: ${host}\r\nContent-Length: 10\r\n\r\n`,
    'GET / HTTP/9.9\r\n\r\n',
    'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n',
    '\x16\x03\x01\x02\x00\x01\x00',
    'GET\r\n\r\n',
    `${'GET / HTTP/1.1\r\n'.repeat(20)}`,
    'CONNECT evil.test:443 HTTP/1.1\r\nHost: evil.test:443\r\n\r\n',
    `GET /v1/events HTTP/1.1\r\nHost: ${host}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\nSec-WebSocket-Version: 13\r\n\r\n`,
  ];
  const garbage = fc.oneof(
    fc.uint8Array({ minLength: 1, maxLength: 400 }),
    fc
      .tuple(fc.constantFrom(...starts), fc.uint8Array({ maxLength: 200 }))
      .map(([start, bytes]) => Buffer.concat([Buffer.from(start), bytes])),
    fc
      .tuple(fc.nat(good.length), fc.uint8Array({ minLength: 1, maxLength: 8 }))
      .map(([at, bytes]) =>
        Buffer.concat([Buffer.from(good.slice(0, at)), bytes, Buffer.from(good.slice(at))]),
      ),
    fc
      .nat(2000)
      .map((n) => Buffer.from(`GET / HTTP/1.1\r\nHost: ${host}\r\n${`X-${n}: y\r\n`.repeat(n)}\r\n`)),
    fc.nat(40_000).map((n) => Buffer.from(`GET /${'a'.repeat(n)} HTTP/1.1\r\nHost: ${host}\r\n\r\n`)),
  );
  const pieces = fc.sample(garbage, { numRuns: GARBAGE, seed: SEED });
  for (let at = 0; at < pieces.length; at += AT_ONCE) {
    const answers = await Promise.all(
      pieces.slice(at, at + AT_ONCE).map((piece) => rawly(daemon.port, piece)),
    );
    for (const answer of answers) {
      expect(statusOf(answer), answer.slice(0, 300)).toBeLessThan(500);
      expect(answer).not.toMatch(STACK);
    }
    expect((await ask({ port: daemon.port, path: '/v1/health', headers: { host } })).status).toBe(200);
  }
  expect(await state()).toBe(before);
}, 600_000);
