import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXTENSION } from '../support/extension-origin.ts';
import { ask, hangUp } from './ask.ts';
import { House, OWN } from './house.ts';
import { rawly, statusOf } from './raw.ts';
import { type Served, served } from './served.ts';

/** One test for each published fault of hono and its Node server that could have touched this daemon. */

let daemon: Served;
beforeAll(async () => {
  daemon = await served();
});
afterAll(async () => {
  hangUp();
  await daemon.stop();
});

const LIMIT = 4 * 1024 * 1024;
const host = () => `127.0.0.1:${daemon.port}`;

async function isUp(): Promise<boolean> {
  const { status } = await ask({ port: daemon.port, path: '/v1/health', headers: { host: host() } });
  return status === 200;
}

describe('CVE-2024-32652, a Host that is none', () => {
  const hosts = [
    '',
    ' ',
    '[',
    ']',
    '[::',
    'a b',
    '%',
    '%zz',
    '\\',
    'a\\b',
    '@',
    'x@y',
    ':',
    ':80',
    'a:b',
    'a:99999',
    '\u00ff',
    '/',
    '//',
    '?',
    '#',
    '..',
    '*',
    '<script>',
    'localhost:',
    `${'a'.repeat(9000)}`,
  ];

  it.each(hosts)('“%s” is refused, and the next request is answered', async (bad) => {
    const answer = await rawly(
      daemon.port,
      Buffer.from(`GET /v1/health HTTP/1.1\r\nHost: ${bad}\r\n\r\n`, 'latin1'),
    );
    expect([400, 421]).toContain(statusOf(answer));
    expect(answer).not.toMatch(/at .*\(|node_modules|TypeError/);
    expect(await isUp()).toBe(true);
  });

  it('as well as none at all, and two', async () => {
    expect(statusOf(await rawly(daemon.port, 'GET /v1/health HTTP/1.1\r\n\r\n'))).toBe(400);
    expect(statusOf(await rawly(daemon.port, 'GET /v1/health HTTP/1.0\r\n\r\n'))).toBe(400);
    const two = `GET /v1/health HTTP/1.1\r\nHost: ${host()}\r\nHost: evil.test\r\n\r\n`;
    expect([400, 421]).toContain(statusOf(await rawly(daemon.port, two)));
    const absolute = `GET http://evil.test/v1/health HTTP/1.1\r\nHost: evil.test\r\n\r\n`;
    expect(statusOf(await rawly(daemon.port, absolute))).toBe(421);
    expect(await isUp()).toBe(true);
  });
});

describe('CVE-2025-59139 and CVE-2026-44456, a body past its limit', () => {
  const head = (more: string) =>
    `POST /v1/pair HTTP/1.1\r\nHost: ${host()}\r\nOrigin: http://${host()}\r\nContent-Type: application/json\r\n${more}\r\n\r\n`;
  const chunk = Buffer.concat([Buffer.from('10000\r\n'), Buffer.alloc(65536, 32), Buffer.from('\r\n')]);
  const chunks = Array.from({ length: LIMIT / 65536 + 8 }, () => chunk);

  it('is refused when it comes in chunks that say no length', async () => {
    const answer = await rawly(daemon.port, head('Transfer-Encoding: chunked'), ...chunks);
    expect(statusOf(answer)).toBe(413);
    expect(await isUp()).toBe(true);
  });

  it.each([
    'Content-Length: 5\r\nTransfer-Encoding: chunked',
    'Transfer-Encoding: chunked\r\nContent-Length: 5',
    'Content-Length: 5\r\nContent-Length: 9000000',
    'Transfer-Encoding: chunked, identity',
    'Transfer-Encoding: xchunked',
    'Transfer-Encoding : chunked',
  ])('is refused when its lengths contradict each other: %j', async (more) => {
    const answer = await rawly(daemon.port, head(more), ...chunks);
    expect([400, 413, 501]).toContain(statusOf(answer));
    expect(await isUp()).toBe(true);
  });

  it('is refused by the daemon itself, whatever the headers say, also without a socket', async () => {
    const house = new House();
    try {
      for (const length of ['0', '5', String(LIMIT), 'x']) {
        const stream = new ReadableStream({
          start(controller) {
            for (let i = 0; i < LIMIT / 65536 + 1; i++) controller.enqueue(new Uint8Array(65536).fill(32));
            controller.close();
          },
        });
        const request = new Request('http://127.0.0.1:8787/v1/pair', {
          ...{ method: 'POST', body: stream, duplex: 'half' },
          headers: {
            ...{ host: '127.0.0.1:8787', origin: OWN, 'content-type': 'application/json' },
            ...{ 'content-length': length, 'transfer-encoding': 'chunked' },
          },
        });
        expect([length, (await house.app.fetch(request, {})).status]).toEqual([length, 413]);
      }
    } finally {
      await house.close();
    }
  });
});

it('CVE-2026-54290: no foreign Origin is ever given back, and no credentials with any', async () => {
  for (const origin of [
    'http://evil.test',
    'null',
    'https://evil.test',
    `http://${host()}.evil.test`,
    'chrome-extension://',
    `${EXTENSION}/`,
  ]) {
    for (const method of ['GET', 'OPTIONS']) {
      const { headers } = await ask({
        port: daemon.port,
        method,
        path: '/v1/session',
        headers: { host: host(), origin },
      });
      expect([origin, headers['access-control-allow-origin']]).toEqual([origin, undefined]);
    }
  }
  const { headers } = await ask({
    port: daemon.port,
    method: 'OPTIONS',
    path: '/v1/session',
    headers: { host: host(), origin: EXTENSION },
  });
  expect(headers['access-control-allow-origin']).toBe(EXTENSION);
  expect(headers['access-control-allow-credentials']).toBeUndefined();
  expect(headers.vary).toMatch(/origin/i);
});

it('serveStatic’s //: no way of writing a path leads past a route or to another file', async () => {
  const paths = [
    '//v1/session',
    '/v1//session',
    '/./v1/session',
    '/x/../v1/session',
    '/%76%31/session',
    '/v1/%73ession',
    '/V1/session',
    '/v1/session/',
    '//etc/passwd',
    '/..%2f..%2fetc/passwd',
    '/%2e%2e/%2e%2e/etc/passwd',
    '/assets/..%5c..%5cindex.html',
    '/\\..\\index.html',
    '//127.0.0.1/index.html',
    '/index.html%00.js',
    '/index.html;x',
    '/.',
    '/..',
  ];
  for (const path of paths) {
    const answer = await rawly(
      daemon.port,
      `GET ${path} HTTP/1.1\r\nHost: ${host()}\r\nConnection: close\r\n\r\n`,
    );
    expect([path, [400, 401, 404].includes(statusOf(answer))]).toEqual([path, true]);
    expect(answer).not.toMatch(/root:/);
  }
});
