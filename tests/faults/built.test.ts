import { execFileSync } from 'node:child_process';
import { once } from 'node:events';
import { get } from 'node:https';
import { resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXTENSION } from '../support/extension-origin.ts';
import { temporaryFolder } from '../support/folder.ts';
import { type Daemon, pairExtension, startDaemon } from './daemon-process.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const VITE = resolve(ROOT, 'node_modules/vite/bin/vite.js');
const home = temporaryFolder();
let daemon: Daemon;

beforeAll(async () => {
  execFileSync(process.execPath, [VITE, 'build', 'daemon', '--logLevel', 'warn'], { cwd: ROOT });
  process.env.DAEMON_MAIN = resolve(ROOT, 'daemon/dist/cli/main.cjs');
  daemon = await startDaemon(home.path, ['start', '--port', '0', '--lan', '--lan-port', '0']);
});
afterAll(async () => {
  delete process.env.DAEMON_MAIN;
  await daemon.stop('SIGTERM');
  home.remove();
});

/** In it, what stands for the classes of Node's fetch must do as they do. */
describe('the built daemon', () => {
  it('answers, also where there is nothing and where another method is asked for', async () => {
    const ask = (path: string, method: string) =>
      fetch(`${daemon.url}${path}`, { method, headers: { origin: daemon.url } });
    expect(await (await ask('/v1/health', 'GET')).json()).toEqual({ ok: true, protocol: 1 });
    expect((await ask('/v1/health', 'HEAD')).status).toBe(200);
    expect((await ask('/v1/nothing', 'GET')).status).toBe(404);
    const refused = await ask('/v1/health', 'PUT');
    expect([refused.status, refused.headers.get('allow')]).toEqual([405, 'GET, HEAD']);
    expect((await (await ask('/v1/openapi.json', 'GET')).json()).openapi).toBe('3.1.1');
  });

  it('guards each answer, and lets an extension read its own', async () => {
    const origin = EXTENSION;
    const guarded = {
      'content-security-policy': expect.stringMatching(/^default-src 'self'; .*frame-ancestors 'none'$/),
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': 'no-store',
    };
    for (const path of ['/v1/health', '/v1/session', '/v1/nothing', '/nothing']) {
      const { headers } = await fetch(`${daemon.url}${path}`, { headers: { origin: daemon.url } });
      expect([path, Object.fromEntries(headers)]).toEqual([path, expect.objectContaining(guarded)]);
      expect(headers.get('access-control-allow-origin')).toBeNull();
    }
    for (const path of ['/v1/health', '/v1/session', '/v1/nothing']) {
      const { headers } = await fetch(`${daemon.url}${path}`, { headers: { origin } });
      const read = { ...guarded, 'access-control-allow-origin': origin, vary: 'Origin' };
      expect([path, Object.fromEntries(headers)]).toEqual([path, expect.objectContaining(read)]);
    }
  });

  it('reads a body of said and of unsaid length, and streams events', async () => {
    const headers = await pairExtension(daemon);
    const push = (body: BodyInit) => {
      const asked = { method: 'POST', headers, body, duplex: 'half' };
      return fetch(`${daemon.url}/v1/push`, asked);
    };
    const body = JSON.stringify({ changes: [] });
    expect((await push(body)).status).toBe(200);
    expect((await push(new Blob([body]).stream())).status).toBe(200);
    expect((await push(new Blob([' '.repeat(5 * 1024 * 1024)]).stream())).status).toBe(413);
    const events = await fetch(`${daemon.url}/v1/events`, { headers });
    const first = await events.body?.getReader().read();
    expect(new TextDecoder().decode(first?.value)).toContain('event: changed');
  });

  it('makes a certificate and serves over TLS', async () => {
    const port = /https:\/\/\S+\.local:(\d+)/.exec(daemon.notes.join(''))?.[1];
    const asked = get({ host: '127.0.0.1', port, path: '/v1/health', rejectUnauthorized: false });
    const [answer] = await once(asked, 'response');
    expect(answer.statusCode).toBe(200);
    answer.resume();
  });
});
