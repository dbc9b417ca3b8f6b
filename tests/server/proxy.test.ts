import { createServer, request } from 'node:http';
import { afterEach, describe, expect, it } from 'vitest';
import { behindProxies, noProxy, siteOf, withoutBase } from '../../daemon/src/server/site.ts';
import { listen } from '../support/port.ts';
import { ask, hangUp } from './ask.ts';
import { NAME, type Served, served } from './served.ts';

let daemon: Served | null = null;
const proxies: ReturnType<typeof createServer>[] = [];
afterEach(async () => {
  hangUp();
  for (const proxy of proxies.splice(0)) proxy.close();
  await daemon?.stop();
  daemon = null;
});

/** A reverse proxy as people have them: it ends TLS elsewhere, says so in headers, and may take the path away. */
async function proxy(port: number, { base, strips }: { base: string; strips: boolean }): Promise<number> {
  const server = createServer((incoming, outgoing) => {
    const path = incoming.url ?? '/';
    const headers = {
      ...incoming.headers,
      host: `127.0.0.1:${port}`,
      'x-forwarded-host': incoming.headers.host ?? '',
      'x-forwarded-proto': 'https',
    };
    const to = { port, method: incoming.method, path: strips ? path.slice(base.length) : path, headers };
    const onward = request(to, (answer) => {
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(outgoing);
    });
    incoming.pipe(onward);
  });
  proxies.push(server);
  return await listen(server);
}

async function pairAt(port: number, path: string, headers: Record<string, string>) {
  const body = JSON.stringify({ code: await daemon?.code(), name: 'Page', kind: 'dashboard' });
  return await ask({
    port,
    method: 'POST',
    path,
    headers: { 'content-type': 'application/json', 'sec-fetch-site': 'same-origin', ...headers },
    body,
  });
}

describe.each([
  ['left in place', false],
  ['taken away', true],
])('behind a proxy, with the base path %s', (_, strips) => {
  it('pages, pairing, session and cookie work under it', async () => {
    daemon = await served({ front: behindProxies('/a/b', ['127.0.0.1']) });
    const port = await proxy(daemon.port, { base: '/a/b', strips });
    const site = { host: NAME, origin: `https://${NAME}` };
    const paired = await pairAt(port, '/a/b/v1/pair', site);
    expect(paired.status).toBe(200);
    const cookie = paired.headers['set-cookie']?.[0] ?? '';
    expect(cookie).toMatch(/^__Secure-platewright-443=/);
    expect(cookie).toMatch(/; Path=\/a\/b\/;/);
    expect(cookie).toMatch(/; Secure/);
    const headers = {
      ...{ host: NAME, 'sec-fetch-site': 'same-origin' },
      cookie: cookie.split(';')[0] ?? '',
    };
    expect((await ask({ port, path: '/a/b/v1/session', headers })).status).toBe(200);
    expect((await ask({ port, path: '/a/b/nothing', headers })).status).toBe(404);
    const foreign = { ...headers, host: 'evil.test' };
    expect((await ask({ port, path: '/a/b/v1/session', headers: foreign })).status).toBe(421);
    const insecure = { ...headers, origin: `http://${NAME}` };
    expect((await ask({ port, path: '/a/b/v1/session', headers: insecure })).status).toBe(403);
  });
});

it('leads from the base path to the folder that pages are relative to', async () => {
  daemon = await served({ front: behindProxies('/a/b', []) });
  const headers = { host: `127.0.0.1:${daemon.port}` };
  const answer = await ask({ port: daemon.port, path: '/a/b', headers });
  expect([answer.status, answer.headers.location]).toEqual([308, '/a/b/']);
  expect((await ask({ port: daemon.port, path: '/a/b/v1/health', headers })).status).toBe(200);
  expect((await ask({ port: daemon.port, path: '/v1/health', headers })).status).toBe(200);
  expect((await ask({ port: daemon.port, path: '/a/bc/v1/health', headers })).status).toBe(404);
});

it('counts nothing for a proxy, whether it says that it is one or passes on the name it was asked by', async () => {
  daemon = await served({ front: behindProxies('', ['127.0.0.1']) });
  const { port } = daemon;
  const own = `127.0.0.1:${port}`;
  const status = async (headers: Record<string, string>) =>
    (await ask({ port, path: '/v1/metrics', headers })).status;
  for (const host of [own, `localhost:${port}`, `[::1]:${port}`]) expect(await status({ host })).toBe(200);
  expect(await status({ host: NAME })).toBe(403);
  expect(await status({ host: `${NAME}:${port}` })).toBe(403);
  expect(await status({ host: own, via: '1.1 proxy' })).toBe(403);
  const open = await proxy(port, { base: '', strips: false });
  expect((await ask({ port: open, path: '/v1/metrics', headers: { host: NAME } })).status).toBe(403);
});

it('believes X-Forwarded headers of no one whom it was not told to trust', async () => {
  for (const front of [noProxy, behindProxies('', ['10.0.0.0/8', 'fd00::/8'])]) {
    daemon = await served({ front });
    const host = `127.0.0.1:${daemon.port}`;
    const lie = { 'x-forwarded-host': NAME, 'x-forwarded-proto': 'https' };
    const { port } = daemon;
    expect((await ask({ port, path: '/v1/health', headers: { ...lie, host: 'evil.test' } })).status).toBe(
      421,
    );
    expect((await pairAt(port, '/v1/pair', { ...lie, host, origin: `https://${NAME}` })).status).toBe(403);
    const paired = await pairAt(port, '/v1/pair', { ...lie, host, origin: `http://${host}` });
    expect(paired.headers['set-cookie']?.[0]).not.toMatch(/Secure/);
    await daemon.stop();
    daemon = null;
  }
});

it('refuses a page that was rebound to it and says what a proxy on this machine would say', async () => {
  daemon = await served({ front: behindProxies('', ['127.0.0.1']) });
  const { port } = daemon;
  const status = async (host: string) =>
    (await ask({ port, path: '/v1/health', headers: { host, 'x-forwarded-host': NAME } })).status;
  // A page may set any header of a proxy's, but its browser sets Host.
  expect(await status(`evil.test:${port}`)).toBe(421);
  for (const host of [`127.0.0.1:${port}`, NAME]) expect(await status(host)).toBe(200);
});

describe('the site of a request', () => {
  const asked = (headers: Record<string, string>, url = 'http://127.0.0.1:8787/v1/x') => ({
    ...{ url, socket: undefined },
    header: (name: string) => headers[name],
  });

  it('takes the last word of a list that proxies add to', () => {
    const trusting = { basePath: '', isTrusted: () => true };
    const said = {
      host: 'inner',
      'x-forwarded-host': 'evil.test, Plates.test',
      'x-forwarded-proto': 'http, https',
    };
    expect(siteOf(asked(said), trusting)).toEqual({ scheme: 'https', host: 'plates.test', path: '/' });
    const odd = { host: 'inner', 'x-forwarded-proto': 'gopher' };
    expect(siteOf(asked(odd), trusting)).toEqual({ scheme: 'http', host: 'inner', path: '/' });
  });

  it('trusts addresses and networks as they were named', () => {
    const { isTrusted } = behindProxies('', ['127.0.0.1', '172.16.0.0/12', '::1']);
    for (const address of ['127.0.0.1', '::ffff:127.0.0.1', '172.31.255.1', '::1'])
      expect([address, isTrusted(address)]).toEqual([address, true]);
    for (const address of ['127.0.0.2', '172.32.0.1', '::2', '', 'x'])
      expect([address, isTrusted(address)]).toEqual([address, false]);
    for (const wrong of ['localhost', '1.2.3', '10.0.0.0/33', '10.0.0.0/x', ''])
      expect(() => behindProxies('', [wrong])).toThrow(RangeError);
  });

  it('takes a base path off whole parts only', () => {
    expect(withoutBase('/a/b/v1/x', '/a/b')).toBe('/v1/x');
    expect(withoutBase('/a/bc', '/a/b')).toBe('/a/bc');
    expect(withoutBase('/v1/x', '')).toBe('/v1/x');
  });
});
