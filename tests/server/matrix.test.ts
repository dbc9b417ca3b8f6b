import { afterAll, beforeAll, expect, it } from 'vitest';
import { api } from '../../daemon/src/server/api.ts';
import { seededChance } from '../../fixtures/season/chance.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { type Asked, ask, hangUp, type Told } from './ask.ts';
import { NAME, type Served, served } from './served.ts';

/** Requests on each of the two bindings. */
const EACH = 2000;

let daemon: Served;
beforeAll(async () => {
  daemon = await served({ lan: true });
});
afterAll(async () => {
  hangUp();
  await daemon.stop();
});

const OTHER_EXTENSION = 'moz-extension://11111111-2222-4333-8444-555555555555';
const EVIL = 'http://evil.test';

interface Case {
  tls: boolean;
  host: string;
  ownHost: boolean;
  origin: string | null;
  ownOrigin: boolean;
  site: string | null;
  mode: string | null;
  dest: string | null;
  method: string;
  path: string;
  type: string | null;
  secret: keyof Secrets;
}

interface Secrets {
  none: Record<string, string>;
  bearer: Record<string, string>;
  cookie: Record<string, string>;
  'revoked bearer': Record<string, string>;
  'revoked cookie': Record<string, string>;
  'made-up bearer': Record<string, string>;
  'made-up cookie': Record<string, string>;
  'bearer and cookie': Record<string, string>;
}

function makeCase(tls: boolean, pick: <T>(of: readonly T[]) => T, secrets: readonly (keyof Secrets)[]): Case {
  const own = tls ? daemon.lanPort : daemon.port;
  const other = tls ? 'http' : 'https';
  const scheme = tls ? 'https' : 'http';
  // Half of the cases are at home, or nothing would ever get past the first question.
  const [host, ownHost] = pick<readonly [string, boolean]>([
    ...[`127.0.0.1:${own}`, `localhost:${own}`, `[::1]:${own}`, `LOCALHOST:${own}`].map(
      (h) => [h, true] as const,
    ),
    ...[`${NAME}:${own}`, NAME, `${NAME}:443`, `127.0.0.1:${own}`, `localhost:${own}`].map(
      (h) => [h, true] as const,
    ),
    ...[`evil.test:${own}`, 'evil.test', '127.0.0.1', `127.0.0.1:${own + 1}`, `10.9.8.7:${own}`].map(
      (h) => [h, false] as const,
    ),
    ...[`127.0.0.1.evil.test:${own}`, `${NAME}.:${own}`, `a.${NAME}`, '[::1]'].map(
      (h) => [h, false] as const,
    ),
  ]);
  const [origin, ownOrigin] = pick<readonly [string | null, boolean]>([
    ...[null, EXTENSION, null, EXTENSION].map((o) => [o, false] as const),
    ...[`${scheme}://${host}`, `${scheme}://${host}`].map((o) => [o, true] as const),
    ...[EVIL, 'null', `${other}://${host}`, OTHER_EXTENSION, `${EXTENSION}.evil.test`].map(
      (o) => [o, false] as const,
    ),
    ...[`http://127.0.0.1:${own + 1}`, `${scheme}://${host}/`].map((o) => [o, false] as const),
  ]);
  return {
    ...{ tls, host, ownHost, origin, ownOrigin },
    site: pick([null, null, 'none', 'same-origin', 'same-origin', 'same-site', 'cross-site']),
    mode: pick([null, 'navigate', 'navigate', 'cors', 'no-cors']),
    dest: pick([null, 'document', 'document', 'empty', 'image', 'iframe']),
    method: pick(['GET', 'GET', 'HEAD', 'POST', 'POST', 'OPTIONS', 'PUT', 'DELETE']),
    path: pick(['/v1/session', '/v1/records', '/v1/records', '/v1/health', '/']),
    type: pick([
      null,
      'application/json',
      'application/json',
      'application/json; charset=utf-8',
      'text/plain',
      'application/x-www-form-urlencoded',
      'text/plain; application/json',
    ]),
    secret: pick(secrets),
  };
}

/** What should happen, said in the order in which it matters, and without a look at how the daemon does it. */
function oracle(c: Case): number {
  if (!c.ownHost) return 421;
  const reads = c.method === 'GET' || c.method === 'HEAD';
  const api = c.path !== '/';
  const extension = c.origin === EXTENSION || c.origin === OTHER_EXTENSION;
  if (c.origin !== null && !extension && !c.ownOrigin) return 403;
  if (c.origin === null && !reads) return 403;
  const elsewhere = c.site === 'same-site' || c.site === 'cross-site';
  const linkFollowed = reads && c.mode === 'navigate' && c.dest === 'document' && !api;
  if (!extension && elsewhere && !linkFollowed) return 403;
  if (extension && api && c.method === 'OPTIONS') return 204;
  if (!api) return 404;
  const takes = c.path === '/v1/records' ? reads || c.method === 'POST' : reads;
  if (!takes) return 405;
  if (c.path === '/v1/health') return 200;
  const bearer = c.secret === 'bearer' || c.secret === 'bearer and cookie';
  const byBearer = extension || c.secret.includes('bearer');
  // Whether the cookie is a good one is not even looked up.
  if (!byBearer && c.secret.includes('cookie') && c.site !== 'same-origin') return 403;
  const letIn = byBearer ? bearer && (!extension || c.origin === EXTENSION) : c.secret === 'cookie';
  if (!letIn) return 401;
  if (c.method === 'POST' && !/^application\/json(;|$)/.test(c.type ?? '')) return 415;
  return 200;
}

async function pair(tls: boolean, kind: 'extension' | 'dashboard'): Promise<Told> {
  const port = tls ? daemon.lanPort : daemon.port;
  const host = `127.0.0.1:${port}`;
  const origin = kind === 'extension' ? EXTENSION : `${tls ? 'https' : 'http'}://${host}`;
  return await ask({
    ...{ port, tls, method: 'POST', path: '/v1/pair' },
    headers: { host, origin, 'sec-fetch-site': 'same-origin', 'content-type': 'application/json' },
    body: JSON.stringify({ code: await daemon.code(), name: 'Test', kind }),
  });
}

async function bearerOn(tls: boolean) {
  const { token } = JSON.parse((await pair(tls, 'extension')).text);
  return { authorization: `Bearer ${token}` };
}

async function secretsOn(tls: boolean): Promise<Secrets> {
  const port = tls ? daemon.lanPort : daemon.port;
  // The cookie's name carries the port of the host it was asked at, so the test gives it every name it may have.
  const underAnyName = (token: string) => {
    const prefix = tls ? '__Host-' : '';
    const names = [port, 443, 80].map((p) => `${prefix}platewright-${p}=${token}`);
    return { cookie: names.join('; ') };
  };
  const cookie = async () => {
    const set = (await pair(tls, 'dashboard')).headers['set-cookie']?.[0] ?? '';
    return underAnyName(/=([\w-]{43});/.exec(set)?.[1] ?? '');
  };
  const revoke = async () => {
    const last = (await daemon.store.devices()).toSorted((a, b) => (a.id < b.id ? -1 : 1)).at(-1);
    if (last !== undefined) await daemon.store.putDevice({ ...last, revokedAt: 1 });
  };
  const secrets: Secrets = {
    none: {},
    bearer: await bearerOn(tls),
    cookie: await cookie(),
    'revoked bearer': await bearerOn(tls),
    'revoked cookie': {},
    'made-up bearer': { authorization: `Bearer ${'a'.repeat(43)}` },
    'made-up cookie': underAnyName('a'.repeat(43)),
    'bearer and cookie': {},
  };
  await revoke();
  secrets['revoked cookie'] = await cookie();
  await revoke();
  secrets['bearer and cookie'] = { ...secrets.bearer, ...secrets.cookie };
  return secrets;
}

function headersOf(c: Case, secrets: Secrets): Record<string, string> {
  return {
    host: c.host,
    ...secrets[c.secret],
    ...(c.origin !== null && { origin: c.origin }),
    ...(c.site !== null && { 'sec-fetch-site': c.site }),
    ...(c.mode !== null && { 'sec-fetch-mode': c.mode }),
    ...(c.dest !== null && { 'sec-fetch-dest': c.dest }),
    ...(c.type !== null && { 'content-type': c.type }),
  };
}

it.each([
  ['loopback', false],
  ['the network', true],
])('on %s, whatever stands in a request, who should be let in is, and nobody else', async (_, tls) => {
  const secrets = await secretsOn(tls);
  const random = seededChance(tls ? 2 : 1).uniform;
  const pick = <T>(of: readonly T[]): T => {
    const found = of[Math.floor(random() * of.length)];
    if (found === undefined) throw new RangeError('nothing to pick from');
    return found;
  };
  const body = JSON.stringify({
    edits: [{ kind: 'day', athlete: 'ann', id: 'day', fields: { date: '2026-03-02' } }],
  });
  const seen = new Map<number, number>();
  for (let i = 0; i < EACH; i++) {
    const names = Object.keys(secrets).filter((name): name is keyof Secrets => name in secrets);
    const c = makeCase(tls, pick, [...names, 'bearer', 'cookie', 'bearer', 'cookie']);
    const before = await daemon.store.lastSeq();
    const asked: Asked = {
      port: tls ? daemon.lanPort : daemon.port,
      tls,
      method: c.method,
      path: c.path,
      headers: headersOf(c, secrets),
    };
    const { status, headers, text } = await ask({ ...asked, ...(c.method === 'POST' && { body }) });
    const expected = oracle(c);
    const where = JSON.stringify({ ...c, expected, status });
    expect(status, where).toBe(expected);
    expect((await daemon.store.lastSeq()) - before, where).toBe(
      status === 200 && c.method === 'POST' ? 1 : 0,
    );
    const shared = headers['access-control-allow-origin'];
    if (shared !== undefined) expect([EXTENSION, OTHER_EXTENSION], where).toContain(shared);
    expect(headers['access-control-allow-credentials'], where).toBeUndefined();
    if (status === 421) expect(text, where).toBe('');
    seen.set(status, (seen.get(status) ?? 0) + 1);
  }
  // The cases reach every answer, or the agreement would say little.
  for (const status of [200, 204, 401, 403, 404, 405, 415, 421])
    expect(seen.get(status), `${status}`).toBeGreaterThan(5);
});

it('TRACE is answered on no route, and a token in the query opens nothing', async () => {
  const host = `127.0.0.1:${daemon.port}`;
  const { authorization } = await bearerOn(false);
  const { port } = daemon;
  for (const { path, method, open } of api) {
    const filled = path.replace('{id}', 'x');
    const traced = await ask({
      port,
      method: 'TRACE',
      path: filled,
      headers: { host, authorization, origin: EXTENSION },
    });
    expect([path, [400, 405, 501].includes(traced.status)]).toEqual([path, true]);
    if (open || method !== 'get') continue;
    for (const name of ['token', 'access_token', 'authorization', 'bearer']) {
      const asked = { port, path: `${filled}?${name}=${authorization.slice(7)}`, headers: { host } };
      expect((await ask(asked)).status).toBe(401);
    }
  }
});
