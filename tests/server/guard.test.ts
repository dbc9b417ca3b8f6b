import { describe, expect, it } from 'vitest';
import { EXTENSION } from '../support/extension-origin.ts';
import { FROM_PAGE, House, OWN, problemOf, useHouse } from './house.ts';

const house = useHouse();

describe('the host', () => {
  it.each(['127.0.0.1:8787', 'localhost:8787', 'LOCALHOST:8787', '[::1]:8787'])('may be %s', async (host) => {
    expect((await house().call('/v1/health', { headers: { host } })).status).toBe(200);
  });

  it.each([
    'evil.test:8787',
    '127.0.0.1',
    '127.0.0.1:80',
    'localhost',
    '127.0.0.1:8787.evil.test',
    '',
    '10.0.0.1:8787',
    '127.0.0.1.evil.test:8787',
    '::1:8787',
    '[::1]',
  ])('may not be “%s”, whatever is asked, and nothing is told', async (host) => {
    for (const path of ['/', '/v1/health', '/v1/session', '/nothing']) {
      const answer = await house().call(path, { headers: { host } });
      expect(answer.status).toBe(421);
      expect(await answer.text()).toBe('');
    }
  });
});

describe('the origin', () => {
  const body = {
    edits: [{ kind: 'day', athlete: 'ann', id: 'day-2026-01-01', fields: { date: '2026-01-01' } }],
  };
  const foreign = [
    'null',
    'http://evil.test',
    'http://127.0.0.1:9999',
    'http://localhost:8787',
    'https://127.0.0.1:8787',
    'http://127.0.0.1:8787/',
    'file://',
    'chrome-extension://',
    `${EXTENSION}.evil.test`,
    'https://chrome-extension://abc',
  ];

  it.each(foreign)('%s neither writes nor reads', async (origin) => {
    const { authorization = '' } = await house().extension();
    const { cookie = '' } = await house().dashboard();
    for (const secret of [{ authorization }, { cookie }]) {
      const write = await house().call('/v1/records', { headers: { ...secret, origin }, body });
      expect(write.status).toBe(403);
      await problemOf(write);
      expect((await house().call('/v1/session', { headers: { ...secret, origin } })).status).toBe(403);
      expect(write.headers.get('access-control-allow-origin')).toBeNull();
    }
    const preflight = await house().call('/v1/push', {
      method: 'OPTIONS',
      headers: { origin, 'access-control-request-method': 'POST' },
    });
    expect(preflight.headers.get('access-control-allow-origin')).toBeNull();
    expect(await house().store.lastSeq()).toBe(0);
  });

  it('must be said by a write, and may be left out by a read', async () => {
    const { authorization = '' } = await house().extension();
    const { cookie = '' } = await house().dashboard();
    for (const secret of [{ authorization }, { cookie, 'sec-fetch-site': 'same-origin' }]) {
      expect((await house().call('/v1/records', { headers: secret, body })).status).toBe(403);
      expect((await house().call('/v1/session', { headers: secret })).status).toBe(200);
    }
    expect((await house().call('/v1/records', { headers: { cookie, ...FROM_PAGE }, body })).status).toBe(200);
    const push = { changes: [] };
    const headers = { authorization, origin: EXTENSION };
    expect((await house().call('/v1/push', { headers, body: push })).status).toBe(200);
  });

  it.each(['cross-site', 'same-site'])('of a %s fetch without an Origin reads nothing', async (site) => {
    const { cookie = '' } = await house().dashboard();
    const fetched = {
      cookie,
      'sec-fetch-site': site,
      'sec-fetch-mode': 'no-cors',
      'sec-fetch-dest': 'image',
    };
    expect((await house().call('/v1/session', { headers: fetched })).status).toBe(403);
    const visited = {
      cookie,
      'sec-fetch-site': site,
      'sec-fetch-mode': 'navigate',
      'sec-fetch-dest': 'document',
    };
    expect((await house().call('/v1/session', { headers: visited })).status).toBe(403);
    const framed = { ...visited, 'sec-fetch-dest': 'iframe' };
    expect((await house().call('/', { headers: framed })).status).toBe(403);
    expect((await house().call('/', { headers: visited })).status).toBe(404);
  });

  it.each([
    ['an extension with host permission', { 'sec-fetch-site': 'none', 'sec-fetch-mode': 'cors' }],
    ['an extension that says its own origin', { origin: EXTENSION, 'sec-fetch-site': 'cross-site' }],
    ['another site', { 'sec-fetch-site': 'cross-site' }],
    ['another port', { 'sec-fetch-site': 'same-site' }],
    ['an address typed by a person', { 'sec-fetch-site': 'none', 'sec-fetch-mode': 'navigate' }],
    ['who does not say where the request is from', {}],
  ])('of %s does not open by the dashboard’s cookie', async (_, said) => {
    const { cookie = '' } = await house().dashboard();
    const [before] = await house().store.devices();
    for (const path of ['/v1/session', '/v1/records', '/v1/views/day', '/v1/events', '/v1/devices']) {
      const answer = await house().call(path, { headers: { cookie, ...said } });
      expect([path, [401, 403].includes(answer.status)]).toEqual([path, true]);
      await problemOf(answer);
    }
    if (!('origin' in said)) {
      const write = await house().call('/v1/records', { headers: { cookie, origin: OWN, ...said }, body });
      expect(write.status).toBe(403);
    }
    expect(await house().store.lastSeq()).toBe(0);
    expect((await house().store.devices())[0]).toEqual(before);
  });

  it('is asked of a browser before it is paired, so that no code is lost on one that never says it', async () => {
    const paired = { code: await house().code(), name: 'Page', kind: 'dashboard' };
    const refused = await house().call('/v1/pair', { headers: { origin: OWN }, body: paired });
    expect(refused.status).toBe(403);
    expect((await problemOf(refused)).detail).toMatch(/https.*127\.0\.0\.1/);
    expect((await house().call('/v1/pair', { headers: FROM_PAGE, body: paired })).status).toBe(200);
  });

  it('of an extension without host permission is told that it may ask', async () => {
    const preflight = await house().call('/v1/push', {
      method: 'OPTIONS',
      headers: { origin: EXTENSION, 'access-control-request-method': 'POST', 'sec-fetch-site': 'cross-site' },
    });
    expect(preflight.status).toBe(204);
    expect(preflight.headers.get('access-control-allow-origin')).toBe(EXTENSION);
    expect(preflight.headers.get('access-control-allow-credentials')).toBeNull();
    expect(preflight.headers.get('vary')).toMatch(/Origin/i);
    const headers = { ...(await house().extension()), 'sec-fetch-site': 'cross-site' };
    const read = await house().call('/v1/session', { headers });
    expect(read.status).toBe(200);
    expect(read.headers.get('access-control-allow-origin')).toBe(EXTENSION);
    const error = await house().call('/v1/session', { headers: { origin: EXTENSION } });
    expect(error.headers.get('access-control-allow-origin')).toBe(EXTENSION);
  });
});

describe('every answer', () => {
  it('keeps a page to itself', async () => {
    for (const path of ['/', '/v1/health', '/v1/nothing', '/v1/session']) {
      const { headers } = await house().call(path);
      const policy = headers.get('content-security-policy') ?? '';
      expect(policy).toContain("default-src 'self'");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toMatch(/unsafe|\*|data:/);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('strict-transport-security')).toBeNull();
      if (path.startsWith('/v1')) expect(headers.get('cache-control')).toBe('no-store');
    }
  });

  it('that is an error is a problem', async () => {
    const headers = await house().extension();
    const cases: [string, Parameters<House['call']>[1], number][] = [
      ['/v1/nothing', { headers }, 404],
      ['/nothing.js', { headers }, 404],
      ['/v1/push', { method: 'PUT', headers, body: {} }, 405],
      ['/v1/push', { headers, body: `{"changes": ["${'x'.repeat(4 * 1024 * 1024)}"]}` }, 413],
      ['/v1/push', { headers: { ...headers, 'content-type': 'text/plain' }, body: {} }, 415],
      ['/v1/push', { headers: { ...headers, 'content-type': 'application/jsonx' }, body: {} }, 415],
      ['/v1/push', { method: 'POST', headers }, 415],
      ['/v1/push', { headers, body: '{"changes": [' }, 400],
      ['/v1/push', { headers, body: {} }, 422],
      ['/v1/push', { headers, body: '[]' }, 422],
      ['/v1/push', { headers, body: 'null' }, 422],
      ['/v1/push', { headers, body: `{"changes": ${'['.repeat(200_000)}${']'.repeat(200_000)}}` }, 422],
      ['/v1/pull?since=-1', { headers }, 422],
      ['/v1/pull?since=1&since=2', { headers }, 422],
      ['/v1/pull?limit=999999', { headers }, 422],
      ['/v1/records?from=2026-02-30', { headers }, 422],
      ['/v1/views/day', { headers }, 404],
      ['/v1/push', { headers: { ...headers, 'platewright-protocol': '0' }, body: { changes: [] } }, 400],
      ['/v1/pull', { headers: { ...headers, 'platewright-protocol': '99' } }, 400],
    ];
    for (const [path, call, status] of cases) {
      const answer = await house().call(path, call);
      expect([path, answer.status]).toEqual([path, status]);
      await problemOf(answer);
    }
    const wrong = await house().call('/v1/push', { method: 'PUT', headers, body: {} });
    expect(wrong.headers.get('allow')).toBe('POST');
  });

  it('says where a request is wrong, and nothing of what was sent', async () => {
    const headers = await house().extension();
    const body = { changes: [{ id: 'SECRET value', athlete: 'ann' }] };
    const problem = await problemOf(await house().call('/v1/push', { headers, body }));
    expect(problem).toMatchObject({ status: 422 });
    expect(problem).toHaveProperty('errors.0.pointer', '/changes/0/id');
    expect(JSON.stringify(problem)).not.toContain('SECRET');
  });

  it('of a fault tells nothing of it', async () => {
    const headers = await house().extension();
    house().store.changesSince = () => Promise.reject(new Error('SECRET at /home/ann'));
    const complain = console.error;
    console.error = () => undefined;
    try {
      const answer = await house().call('/v1/pull', { headers });
      expect(answer.status).toBe(500);
      expect(JSON.stringify(await problemOf(answer))).not.toMatch(/SECRET|home/);
    } finally {
      console.error = complain;
    }
  });
});

it('serves the built pages, by their exact names', async () => {
  const bytes = new TextEncoder().encode('<p>hello</p>');
  const files = new Map([
    ['/index.html', { bytes, type: 'text/html; charset=utf-8' }],
    ['/assets/a-1.js', { bytes, type: 'text/javascript; charset=utf-8' }],
  ]);
  const built = new House(files);
  try {
    const index = await built.call('/');
    expect(index.status).toBe(200);
    expect(index.headers.get('content-type')).toMatch(/html/);
    expect(index.headers.get('cache-control')).toBe('no-cache');
    expect((await built.call('/', { method: 'HEAD' })).status).toBe(200);
    expect((await built.call('/assets/a-1.js')).headers.get('cache-control')).toMatch(/immutable/);
    for (const path of [
      '/assets',
      '/index',
      '//index.html',
      '/..%2findex.html',
      '/INDEX.html',
      '/index.html/',
    ]) {
      expect([path, (await built.call(path)).status]).toEqual([path, 404]);
    }
  } finally {
    await built.close();
  }
});
