import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { nameOf } from '../../daemon/src/keep/bytes.ts';
import { issueCode } from '../../daemon/src/server/issue-code.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { problemOf, useHouse } from './house.ts';
import { picture } from './pictures.ts';

const house = useHouse();

type Headers = Record<string, string>;

const JPEG = picture('image/jpeg', 'of ann');
const at = (content: Uint8Array, athlete = 'ann') => `/v1/photos/${nameOf(content)}?athlete=${athlete}`;

function put(headers: Headers, content: Uint8Array, athlete = 'ann'): Promise<Response> {
  return house().call(at(content, athlete), { method: 'PUT', headers, body: content });
}

function record(content: Uint8Array, more: object = {}) {
  const fields = { date: '2026-03-01', sha256: nameOf(content), mediaType: 'image/jpeg', ...more };
  return { kind: 'photo', athlete: 'ann', id: `photo-${nameOf(content).slice(0, 8)}`, fields };
}

async function edit(headers: Headers, edits: object[]): Promise<void> {
  expect((await house().call('/v1/records', { headers, body: { edits } })).status).toBe(200);
}

function kept(): string[] {
  if (!existsSync(house().files)) return [];
  const found = readdirSync(house().files, { recursive: true, withFileTypes: true });
  return found.filter((item) => item.isFile()).map(({ name }) => name);
}

describe('a photo', () => {
  it.each(['image/jpeg', 'image/png', 'image/webp'] as const)(
    'that is %s goes in and comes out as it was, as a picture and nothing else',
    async (type) => {
      const headers = await house().dashboard();
      const content = picture(type, 'of ann');
      expect((await put(headers, content)).status).toBe(204);
      // Its record may lie about the type.
      await edit(headers, [record(content, { mediaType: 'image/png' })]);
      const answer = await house().call(at(content), { headers });
      expect(answer.status).toBe(200);
      expect(new Uint8Array(await answer.arrayBuffer())).toEqual(content);
      expect(answer.headers.get('content-type')).toBe(type);
      expect(answer.headers.get('content-disposition')).toBe('inline; filename="photo"');
      expect(answer.headers.get('content-security-policy')).toMatch(/^default-src 'none';.* sandbox$/);
      expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
      expect(answer.headers.get('cross-origin-resource-policy')).toBe('same-origin');
      expect(answer.headers.get('cache-control')).toBe('no-store');
      expect((await house().call(at(content), { method: 'HEAD', headers })).status).toBe(200);
    },
  );

  it('is a JPEG, PNG or WebP, whatever is said of it, and nothing else is kept', async () => {
    const headers = await house().dashboard();
    const words = [
      '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>',
      ...['<!doctype html><script>alert(1)</script>', 'GIF89a', '%PDF-1.7', 'PK\u0003\u0004', 'MZ', ''],
      ...['RIFF....WAVEfmt ', 'RIFF', '\u0089PNG', 'x\u00ff\u00d8\u00ff', '{"a":1}'],
    ];
    for (const word of words) {
      const content = new Uint8Array(Buffer.from(word, 'latin1'));
      for (const type of ['image/jpeg', 'image/svg+xml', 'text/html']) {
        const answer = await put({ ...headers, 'content-type': type }, content);
        expect([word, type, answer.status]).toEqual([word, type, 415]);
        expect((await problemOf(answer)).type).toMatch(/no-picture$/);
      }
    }
    for (const type of ['image/png', 'text/html', 'image/jpeg; charset=utf-8'])
      expect((await put({ ...headers, 'content-type': type }, JPEG)).status).toBe(415);
    expect(kept()).toEqual([]);
  });

  it('is kept under its own SHA-256 alone, in 4 MiB at the most', async () => {
    const headers = await house().dashboard();
    const names = ['a'.repeat(64), nameOf(JPEG).toUpperCase(), `${nameOf(JPEG)}0`, '..%2f..%2fstore.sqlite'];
    for (const name of names) {
      const path = `/v1/photos/${name}?athlete=ann`;
      const answer = await house().call(path, { method: 'PUT', headers, body: JPEG });
      expect([name, answer.status]).toEqual([name, 422]);
      expect((await house().call(path, { headers })).status).toBe(404);
    }
    const large = new Uint8Array(4 * 1024 * 1024 + 1);
    large.set(JPEG);
    expect((await put(headers, large)).status).toBe(413);
    expect((await put(headers, large.subarray(0, -1))).status).toBe(204);
    expect(kept()).toHaveLength(1);
  });

  it('twice is one file, and mends one that was damaged', async () => {
    const headers = await house().dashboard();
    await edit(headers, [record(JPEG)]);
    expect((await house().call(at(JPEG), { headers })).status).toBe(404);
    expect((await put(headers, JPEG)).status).toBe(204);
    writeFileSync(join(house().files, nameOf(JPEG).slice(0, 2), nameOf(JPEG)), 'something else');
    const damaged = await house().call(at(JPEG), { headers });
    expect(damaged.status).toBe(404);
    expect((await problemOf(damaged)).detail).toMatch(/verify/);
    expect((await put(headers, JPEG)).status).toBe(204);
    expect((await house().call(at(JPEG), { headers })).status).toBe(200);
    expect(kept()).toEqual([nameOf(JPEG)]);
  });

  it('is shown while a record of that athlete names it, and no longer', async () => {
    const headers = await house().dashboard();
    const status = async (athlete = 'ann') => (await house().call(at(JPEG, athlete), { headers })).status;
    await put(headers, JPEG);
    expect(await status()).toBe(404);
    await edit(headers, [record(JPEG)]);
    expect(await status()).toBe(200);
    expect(await status('bob')).toBe(404);
    await edit(headers, [{ ...record(JPEG), fields: { removed: true } }]);
    expect(await status()).toBe(404);
    await edit(headers, [{ ...record(JPEG), fields: { removed: false } }]);
    expect(await status()).toBe(200);
    expect((await house().call(`/v1/photos/${nameOf(JPEG)}`, { headers })).status).toBe(422);
  });

  it('is not for a device of another athlete, and not written by one that may look only', async () => {
    const owner = await house().dashboard();
    await put(owner, JPEG);
    await edit(owner, [record(JPEG)]);
    const other = picture('image/jpeg', 'of bob');
    const device = async (athlete: string, access: 'read' | 'write') => {
      const { code } = await issueCode(house().store, house().now, { athlete, access });
      const body = { code, name: 'Phone', kind: 'extension' };
      const paired = await house().call('/v1/pair', { headers: { origin: EXTENSION }, body });
      return { origin: EXTENSION, authorization: `Bearer ${(await paired.json()).token}` };
    };
    const [bob, reader] = [await device('bob', 'write'), await device('ann', 'read')];
    expect((await house().call(at(JPEG), { headers: bob })).status).toBe(403);
    expect((await house().call(at(JPEG, 'bob'), { headers: bob })).status).toBe(404);
    expect((await put(bob, other)).status).toBe(403);
    expect((await house().call(at(JPEG), { headers: reader })).status).toBe(200);
    expect((await put(reader, other)).status).toBe(403);
    expect(kept()).toEqual([nameOf(JPEG)]);
    expect((await house().call(at(JPEG))).status).toBe(401);
  });
});
