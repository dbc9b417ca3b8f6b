import { createHash, scryptSync } from 'node:crypto';
import { checkFrom } from '@platewright/core/protocol/check.ts';
import { describe, expect, it } from 'vitest';
import { newCode, readCode } from '../../daemon/src/server/secrets.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { FROM_PAGE, OWN, problemOf, useHouse } from './house.ts';

const house = useHouse();

function pair(code: string, kind = 'extension', origin = EXTENSION): Promise<Response> {
  const headers = origin === OWN ? FROM_PAGE : { origin };
  return house().call('/v1/pair', { headers, body: { code, name: 'Browser', kind } });
}

describe('pairing', () => {
  it('gives an extension its token once and keeps only the hash', async () => {
    const answer = await pair((await house().code()).toLowerCase());
    expect(answer.status).toBe(200);
    expect(answer.headers.get('set-cookie')).toBeNull();
    const { token, device, store } = await answer.json();
    expect(token).toMatch(/^[\w-]{43}$/);
    expect(store).toBe(house().store.id);
    const [row] = await house().store.devices();
    expect(row).toMatchObject({ id: device, kind: 'extension', origin: EXTENSION, revokedAt: null });
    expect(JSON.stringify(row)).not.toContain(token);
  });

  it('gives a dashboard a cookie that no script can read, and no token', async () => {
    const answer = await pair(await house().code(), 'dashboard', OWN);
    expect(Object.keys(await answer.json()).sort()).toEqual(['device', 'key', 'store']);
    const cookie = answer.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/^platewright-8787=[\w-]{43};/);
    expect(cookie).toMatch(/HttpOnly/);
    expect(cookie).toMatch(/SameSite=Strict/);
    expect(cookie).toMatch(/Path=\//);
  });

  it('takes a code once', async () => {
    const code = await house().code();
    expect((await pair(code)).status).toBe(200);
    const again = await pair(code);
    expect(again.status).toBe(403);
    expect((await problemOf(again)).type).toMatch(/no-code$/);
  });

  it('takes a code for ten minutes', async () => {
    const code = await house().code();
    house().now += 10 * 60_000;
    expect((await problemOf(await pair(code))).type).toMatch(/no-code$/);
  });

  it('burns codes after five wrong tries, and refuses every try after ten', async () => {
    const code = await house().code();
    for (let i = 0; i < 5; i++)
      expect((await problemOf(await pair('0000-0000'))).type).toMatch(/wrong-code$/);
    for (let i = 0; i < 5; i++) expect((await problemOf(await pair(code))).type).toMatch(/no-code$/);
    const fresh = await house().code();
    const refused = await pair(fresh);
    expect(refused.status).toBe(429);
    expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(0);
    house().now += 10 * 60_000;
    expect((await pair(await house().code())).status).toBe(200);
  });

  it('takes codes again when the clock was set back by a year after ten wrong tries', async () => {
    for (let i = 0; i < 10; i++) expect((await pair('0000-0000')).status).toBe(403);
    expect((await pair('0000-0000')).status).toBe(429);
    house().now -= 365 * 86_400_000;
    expect((await pair(await house().code())).status).toBe(200);
  });

  it('counts tries that come all at once, one after the other', async () => {
    await house().code();
    const statuses = (await Promise.all(Array.from({ length: 30 }, () => pair('0000-0000')))).map(
      ({ status }) => status,
    );
    expect(statuses.filter((status) => status === 403)).toHaveLength(10);
    expect(statuses.filter((status) => status === 429)).toHaveLength(20);
  });

  it('keeps a code by a slow hash, each with a salt of its own', async () => {
    const codes = [await house().code(), await house().code()].map(readCode);
    const kept = await house().store.waitingCodes(house().now);
    const parts = kept.map((text) => text.split(':').map((part) => Buffer.from(part, 'base64url')));
    for (const [salt = Buffer.alloc(0), key] of parts) {
      expect(salt).toHaveLength(16);
      // The cost that the OWASP Password Storage Cheat Sheet asks of scrypt in 32 MiB.
      const keys = codes.map((code) =>
        scryptSync(code, salt, 32, { N: 2 ** 15, r: 8, p: 3, maxmem: 2 ** 26 }),
      );
      expect(keys.filter((made) => key !== undefined && made.equals(key))).toHaveLength(1);
    }
    expect(new Set(parts.map(([salt]) => salt?.toString('hex'))).size).toBe(2);
  });

  it('takes an extension’s code only from an extension, and a page’s only from the page', async () => {
    expect((await pair(await house().code(), 'dashboard', EXTENSION)).status).toBe(403);
    expect((await pair(await house().code(), 'extension', OWN)).status).toBe(403);
  });

  it('has codes of 40 bits: eight letters of 32, each as likely as any other', () => {
    const codes = Array.from({ length: 8000 }, newCode);
    expect(new Set(codes).size).toBe(codes.length);
    const letters = codes.map((code) => code.replace('-', '')).map((code) => [...code]);
    for (let place = 0; place < 8; place++) {
      const counts = Map.groupBy(letters, (code) => code[place]);
      expect(counts.size).toBe(32);
      // 250 of each are to be expected, give or take 16; six times that is never seen.
      for (const { length } of counts.values()) expect(Math.abs(length - 250)).toBeLessThan(96);
    }
  });

  it('takes the sixth try of a code for none, even when it is right', async () => {
    const codes = [await house().code(), await house().code()];
    for (let i = 0; i < 4; i++) await pair(`0000-000${i}`);
    expect((await pair(codes[0] ?? '')).status).toBe(200);
    await pair('0000-0000');
    expect((await problemOf(await pair(codes[1] ?? ''))).type).toMatch(/no-code$/);
  });

  it('gives both ends the same check, and each device another one', async () => {
    const headers = await house().dashboard();
    const answers = [await pair(await house().code()), await pair(await house().code())];
    const paired = await Promise.all(answers.map((answer) => answer.json()));
    const { devices } = await (await house().call('/v1/devices', { headers })).json();
    const shown = paired.map(({ device, key }) => {
      const sha256 = createHash('sha256').update(`platewright pairing ${key} ${device}`).digest();
      return checkFrom(sha256);
    });
    const listed = paired.map(({ device }) => devices.find(({ id }: { id: string }) => id === device).check);
    expect(listed).toEqual(shown);
    expect(new Set(listed).size).toBe(2);
  });

  it('takes the earlier key from a browser that pairs again', async () => {
    const headers = await house().dashboard();
    const body = { code: await house().code(), name: 'Again', kind: 'dashboard' };
    expect((await house().call('/v1/pair', { headers, body })).status).toBe(200);
    expect((await house().call('/v1/session', { headers })).status).toBe(401);
    const wrong = await house().dashboard();
    const guess = { ...body, code: '0000-0000' };
    expect((await house().call('/v1/pair', { headers: wrong, body: guess })).status).toBe(403);
    expect((await house().call('/v1/session', { headers: wrong })).status).toBe(200);
  });

  it('reads a code as people write it', () => {
    expect(readCode(' oil2 -abcd')).toBe('0112ABCD');
  });

  it('issues codes to who is paired', async () => {
    const headers = await house().dashboard();
    const answer = await house().call('/v1/devices/pairing', { headers, body: {} });
    const { code, expiresAt } = await answer.json();
    expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
    expect(expiresAt - house().now).toBe(10 * 60_000);
    expect((await pair(code)).status).toBe(200);
  });
});

describe('a paired device', () => {
  it('is known by its own kind of secret only', async () => {
    const { authorization = '' } = await house().extension();
    const { cookie = '' } = await house().dashboard();
    const status = async (headers: Record<string, string>) =>
      (await house().call('/v1/session', { headers: { 'sec-fetch-site': 'same-origin', ...headers } }))
        .status;
    expect(await status({ authorization })).toBe(200);
    expect(await status({ authorization, origin: EXTENSION })).toBe(200);
    expect(await status({ cookie })).toBe(200);
    expect(await status({})).toBe(401);
    expect(await status({ authorization: `Bearer ${'a'.repeat(43)}` })).toBe(401);
    expect(await status({ authorization: 'Bearer short' })).toBe(401);
    expect(await status({ cookie: cookie.replace('platewright-8787=', 'platewright-1=') })).toBe(401);
    const secret = cookie.split('=')[1] ?? '';
    expect(await status({ authorization: `Bearer ${secret}` })).toBe(401);
    expect(await status({ cookie: `platewright-8787=${authorization.slice(7)}` })).toBe(401);
    expect(await status({ cookie, origin: EXTENSION })).toBe(401);
    const other = EXTENSION.replace('a', 'b');
    expect(await status({ authorization, origin: other })).toBe(401);
  });

  it('is let go with the next request', async () => {
    const extension = await house().extension();
    const dashboard = await house().dashboard();
    const list = async () =>
      (await (await house().call('/v1/devices', { headers: dashboard })).json()).devices;
    const first = (await list()).find(({ kind }: { kind: string }) => kind === 'extension');
    expect(first).toMatchObject({ revoked: false, current: false, name: 'Browser' });
    expect(JSON.stringify(first)).not.toMatch(/hash/i);
    const gone = await house().call(`/v1/devices/${first.id}`, { method: 'DELETE', headers: dashboard });
    expect(gone.status).toBe(204);
    const refused = await house().call('/v1/session', { headers: extension });
    expect(refused.status).toBe(401);
    expect(refused.headers.get('www-authenticate')).toMatch(/^Bearer/);
    await problemOf(refused);
    expect(await list()).toContainEqual(expect.objectContaining({ id: first.id, revoked: true }));
    const nobody = await house().call('/v1/devices/nobody', { method: 'DELETE', headers: dashboard });
    expect(nobody.status).toBe(404);
    await problemOf(nobody);
  });

  it('shows when it was last seen, to the minute', async () => {
    const headers = await house().extension();
    house().now += 30_000;
    await house().call('/v1/session', { headers });
    const seen = async () => (await house().store.devices())[0]?.lastSeenAt;
    expect(await seen()).toBe(house().now - 30_000);
    house().now += 30_000;
    await house().call('/v1/session', { headers });
    expect(await seen()).toBe(house().now);
    // As when the clock was ahead, and is right again.
    house().now -= 365 * 86_400_000;
    await house().call('/v1/session', { headers });
    expect(await seen()).toBe(house().now);
  });

  it('is told which store this is, and nobody else', async () => {
    const headers = await house().dashboard();
    for (const said of [{}, headers]) {
      const health = await (await house().call('/v1/health', { headers: said })).json();
      expect(Object.keys(health).sort()).toEqual(['ok', 'protocol']);
    }
    const unpaired = await Promise.all(
      ['/v1/health', '/v1/metrics', '/v1/openapi.json', '/v1/session', '/'].map(async (path) =>
        (await house().call(path)).text(),
      ),
    );
    expect(unpaired.join()).not.toContain(house().store.id);
    expect((await (await house().call('/v1/session', { headers })).json()).store).toBe(house().store.id);
  });

  it('learns who it is and which athletes there are', async () => {
    const headers = await house().extension();
    const session = await (await house().call('/v1/session', { headers })).json();
    expect(session).toMatchObject({ name: 'Browser', store: house().store.id, demo: false, athletes: [] });
    expect(session.now).toBe(house().now);
  });
});
