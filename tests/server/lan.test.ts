import { hash, X509Certificate } from 'node:crypto';
import { createSocket } from 'node:dgram';
import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { Agent, request } from 'node:https';
import { connect as connectPlain } from 'node:net';
import { join } from 'node:path';
import { connect, type DetailedPeerCertificate } from 'node:tls';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { localName, ownAddresses } from '../../daemon/src/network/addresses.ts';
import { announce } from '../../daemon/src/network/announce.ts';
import { type Certificate, fingerprints, keptCertificate } from '../../daemon/src/network/certificate.ts';
import { makeCertificate } from '../../daemon/src/network/make-certificate.ts';
import { ownHosts } from '../../daemon/src/server/hosts.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { useFolder } from '../support/use-folder.ts';
import { type Asked, ask, hangUp } from './ask.ts';
import { athleteFields, change } from './fields.ts';
import { rawly } from './raw.ts';
import { record } from './recorder.ts';
import { NAME, type Served, served } from './served.ts';

let daemon: Served;
beforeEach(async () => {
  daemon = await served({ lan: true });
});
afterEach(async () => {
  hangUp();
  await daemon.stop();
});

/** The certificate that a port shows, and the protocol spoken with it. */
function handshake(
  port: number,
  options: object = {},
): Promise<{ peer: DetailedPeerCertificate; protocol: string; suite: string }> {
  return new Promise((resolve, reject) => {
    const socket = connect({ port, host: '127.0.0.1', rejectUnauthorized: false, ...options }, () => {
      const [peer, protocol] = [socket.getPeerCertificate(true), socket.getProtocol() ?? ''];
      resolve({ peer, protocol, suite: socket.getCipher().name });
      socket.destroy();
    });
    socket.once('error', reject);
  });
}

/** The check as someone else would work it out, from nothing but the certificate on the wire and the device's id. */
function checkByHand(raw: Buffer, device: string): string {
  const key = hash(
    'sha256',
    new X509Certificate(raw).publicKey.export({ type: 'spki', format: 'der' }),
    'hex',
  );
  const bits = BigInt(`0x${hash('sha256', `platewright pairing ${key} ${device}`, 'hex').slice(0, 10)}`);
  const letters = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
  const text = Array.from({ length: 8 }, (_, i) => letters[Number((bits >> BigInt(35 - 5 * i)) & 31n)]).join(
    '',
  );
  return `${text.slice(0, 4)}-${text.slice(4)}`;
}

const FETCHED = { 'sec-fetch-site': 'same-origin' };

async function pairPage(host: string): Promise<{ cookie: string; text: string }> {
  const { headers, text } = await ask({
    ...{ port: daemon.lanPort, tls: true, method: 'POST', path: '/v1/pair' },
    headers: { host, origin: `https://${host}`, ...FETCHED, 'content-type': 'application/json' },
    body: JSON.stringify({ code: await daemon.code(), name: 'Phone', kind: 'dashboard' }),
  });
  return { cookie: headers['set-cookie']?.[0] ?? '', text };
}

describe('on the network', () => {
  it('there is TLS 1.3 and nothing else', async () => {
    expect((await handshake(daemon.lanPort)).protocol).toBe('TLSv1.3');
    await expect(handshake(daemon.lanPort, { maxVersion: 'TLSv1.2' })).rejects.toThrow(/protocol version/);
    const plain = await rawly(
      daemon.lanPort,
      `GET /v1/health HTTP/1.1\r\nHost: 127.0.0.1:${daemon.lanPort}\r\n\r\n`,
    );
    expect(plain).not.toMatch(/HTTP\/1\.1 [23]/);
    expect((await handshake(daemon.lanPort)).protocol).toBe('TLSv1.3');
  });

  it('the strongest suite is taken, whatever the caller likes best', async () => {
    const suites = ['TLS_AES_128_GCM_SHA256', 'TLS_CHACHA20_POLY1305_SHA256', 'TLS_AES_256_GCM_SHA384'];
    const { suite } = await handshake(daemon.lanPort, { ciphers: suites.join(':') });
    expect(suite).toBe('TLS_AES_256_GCM_SHA384');
  });

  it('metrics are refused to other machines', async () => {
    const agent = new Agent({ rejectUnauthorized: false });
    for (const host of ownAddresses()) {
      const status = (path: string) =>
        new Promise((resolve, reject) => {
          const asking = request({ host, port: daemon.lanPort, path, agent }, (answer) => {
            answer.resume();
            resolve(answer.statusCode);
          });
          asking.once('error', reject).end();
        });
      expect([host, await status('/v1/health'), await status('/v1/metrics')]).toEqual([host, 200, 403]);
    }
    agent.destroy();
  });

  it('both ends show the same check, which follows from the certificate on the wire', async () => {
    const host = `127.0.0.1:${daemon.lanPort}`;
    const { cookie, text } = await pairPage(host);
    const { device, key } = JSON.parse(text);
    const { peer } = await handshake(daemon.lanPort);
    expect(daemon.checks).toEqual([checkByHand(peer.raw, device)]);
    expect(key).toBe(fingerprints(daemon.certificate).key);
    const headers = { host, ...FETCHED, cookie: cookie.split(';')[0] ?? '' };
    const list = await ask({ port: daemon.lanPort, tls: true, path: '/v1/devices', headers });
    expect(JSON.parse(list.text).devices[0].check).toBe(daemon.checks[0]);
  });

  it('over TLS the cookie is __Host- and Secure, and worth nothing without TLS', async () => {
    const host = `127.0.0.1:${daemon.lanPort}`;
    const { cookie, text } = await pairPage(host);
    expect(text).not.toContain('token');
    expect(cookie).toMatch(new RegExp(`^__Host-platewright-${daemon.lanPort}=`));
    for (const part of [/HttpOnly/, /Secure/, /SameSite=Strict/, /Path=\/(;|$)/])
      expect(cookie).toMatch(part);
    const secret = cookie.split(';')[0] ?? '';
    const status = async (port: number, tls: boolean) =>
      (
        await ask({
          ...{ port, tls, path: '/v1/session' },
          headers: { host: `127.0.0.1:${port}`, ...FETCHED, cookie: secret },
        })
      ).status;
    expect(await status(daemon.lanPort, true)).toBe(200);
    expect(await status(daemon.port, false)).toBe(401);
  });

  it('no address beyond loopback answers plain HTTP', async () => {
    for (const address of ownAddresses()) {
      const reached = await new Promise<boolean>((resolve) => {
        const socket = connectPlain({ port: daemon.port, host: address }, () => resolve(true));
        socket.once('error', () => resolve(false)).setTimeout(2000, () => resolve(false));
      });
      expect([address, reached]).toEqual([address, false]);
    }
  });

  it('the daemon answers to its addresses and names, and to no other', async () => {
    const status = async (host: string, port = daemon.lanPort) =>
      (await ask({ port, tls: port === daemon.lanPort, path: '/v1/health', headers: { host } })).status;
    for (const address of ownAddresses()) {
      const host = address.includes(':') ? `[${address}]` : address;
      expect([host, await status(`${host}:${daemon.lanPort}`)]).toEqual([host, 200]);
      expect([host, await status(`${host}:1`)]).toEqual([host, 421]);
    }
    for (const host of [NAME, `${NAME}:${daemon.lanPort}`, `localhost:${daemon.lanPort}`])
      expect([host, await status(host)]).toEqual([host, 200]);
    for (const host of [
      'evil.test',
      `evil.test:${daemon.lanPort}`,
      `10.255.255.254:${daemon.lanPort}`,
      localName(),
    ])
      expect([host, await status(host)]).toEqual([host, 421]);
  });

  it('another certificate is shown from the next connection on', async () => {
    const { key, cert } = await makeCertificate([NAME], Date.now(), daemon.certificate.key);
    daemon.renew({ key, cert });
    const { peer } = await handshake(daemon.lanPort);
    expect(peer.raw.equals(new X509Certificate(cert).raw)).toBe(true);
    expect(peer.raw.equals(new X509Certificate(daemon.certificate.cert).raw)).toBe(false);
  });

  it('a whole pairing and sync say no private word in clear', async () => {
    const words = ['CANARY-NAME', 'CANARY-FOOD', 'CANARY-DEVICE', 'CANARY-NOTE'];
    const run = async (tls: boolean) => {
      const port = tls ? daemon.lanPort : daemon.port;
      const wire = await record(port);
      const host = `127.0.0.1:${port}`;
      const secrets: string[] = [];
      const say = (asked: Omit<Asked, 'port'>) =>
        ask({ ...asked, port: wire.port, tls, headers: { host, ...asked.headers } });
      const pair = async (kind: string, origin: string) => {
        const code = await daemon.code();
        secrets.push(code);
        const body = JSON.stringify({ code, name: 'CANARY-DEVICE', kind });
        return await say({
          method: 'POST',
          path: '/v1/pair',
          headers: { origin, ...FETCHED, 'content-type': 'application/json' },
          body,
        });
      };
      const { token } = JSON.parse((await pair('extension', EXTENSION)).text);
      const page = await pair('dashboard', `${tls ? 'https' : 'http'}://${host}`);
      const cookie = page.headers['set-cookie']?.[0]?.split(';')[0] ?? '';
      secrets.push(token, cookie.split('=')[1] ?? '', daemon.store.id);
      const headers = {
        origin: EXTENSION,
        authorization: `Bearer ${token}`,
        'content-type': 'application/json',
      };
      const kinds = [
        change(`athlete-${tls}`, 'athlete', 'ann', { ...athleteFields, name: 'CANARY-NAME' }),
        change(`food-${tls}`, 'food', 'own', {
          name: 'CANARY-FOOD',
          per100: { energyKcal: 1, proteinG: 0, carbohydrateG: 0, fatG: 0 },
        }),
        change(`weigh-${tls}`, 'weigh-in', 'w', { date: '2026-03-02', kg: 70, at: 1, note: 'CANARY-NOTE' }),
      ];
      const pushed = await say({
        method: 'POST',
        path: '/v1/push',
        headers,
        body: JSON.stringify({ changes: kinds }),
      });
      expect(pushed.text).not.toContain('rejected');
      expect((await say({ path: '/v1/pull', headers })).text).toContain('CANARY-FOOD');
      for (const path of [
        '/',
        '/v1/session',
        '/v1/records',
        '/v1/views/day',
        '/v1/views/body',
        '/v1/devices',
      ])
        expect((await say({ path, headers: { ...FETCHED, cookie } })).status).toBeLessThan(500);
      wire.stop();
      hangUp();
      return { wire, said: [...words, ...secrets, 'platewright', 'Bearer', '/v1/pull'] };
    };
    const secret = await run(true);
    expect(secret.wire.bytes()).toBeGreaterThan(20_000);
    expect(secret.said.filter((word) => secret.wire.heard(word))).toEqual([]);
    // The same over plain loopback, to see that the recorder would have heard it.
    const clear = await run(false);
    expect(clear.said.filter((word) => !clear.wire.heard(word))).toEqual([]);
  });
});

describe('the kept certificate', () => {
  const day = 86_400_000;
  const wanted = { names: ['shed.local'], addresses: ['192.0.2.7', 'fd00::7'] };
  const folder = useFolder();

  const keep = (now: number, more: Partial<typeof wanted> = {}) =>
    keptCertificate(folder(), { ...wanted, ...more }, now);
  const same = (a: Certificate, b: Certificate) =>
    fingerprints(a).certificate === fingerprints(b).certificate;

  it('is made once, for names and addresses, for this user’s eyes alone', async () => {
    const made = await keep(Date.now());
    const { subjectAltName, validToDate, publicKey, ca, signatureAlgorithm } = new X509Certificate(made.cert);
    expect(signatureAlgorithm).toBe('ecdsa-with-SHA256');
    expect(subjectAltName).toMatch(
      /DNS:localhost.*IP Address:127\.0\.0\.1.*DNS:shed\.local.*IP Address:192\.0\.2\.7/,
    );
    expect(publicKey.asymmetricKeyDetails?.namedCurve).toBe('prime256v1');
    expect(ca).toBe(false);
    expect((validToDate.getTime() - Date.now()) / day).toBeLessThan(825);
    expect(statSync(join(folder(), 'tls.pem')).mode & 0o777).toBe(0o600);
    expect(same(await keep(Date.now()), made)).toBe(true);
    expect(same(await keep(Date.now(), { addresses: ['192.0.2.8'] }), made)).toBe(true);
  });

  it('is renewed before it ends and for a new name, with the same key', async () => {
    const now = Date.now();
    const made = await keep(now);
    expect(same(await keep(now + 789 * day), made)).toBe(true);
    const renewed = await keep(now + 791 * day);
    expect(same(renewed, made)).toBe(false);
    expect(fingerprints(renewed).key).toBe(fingerprints(made).key);
    const named = await keep(now + 791 * day, { names: ['shed.local', 'plates.example.org'] });
    expect(new X509Certificate(named.cert).checkHost('plates.example.org')).toBe('plates.example.org');
    expect(fingerprints(named).key).toBe(fingerprints(made).key);
  });

  it('is made anew when the file is damaged', async () => {
    const made = await keep(Date.now());
    const path = join(folder(), 'tls.pem');
    const other = await keptCertificate(mkdtempSync(join(folder(), 'x-')), wanted, Date.now());
    for (const text of [
      '',
      'nonsense',
      readFileSync(path, 'utf8').slice(0, 300),
      `${made.key}\n${other.cert}`,
    ]) {
      writeFileSync(path, text);
      const mended = await keep(Date.now());
      expect(fingerprints(mended).key).not.toBe(fingerprints(made).key);
    }
  });
});

describe('own hosts', () => {
  const own = ownHosts(() => ({
    ports: [443, 8787],
    addresses: ['192.0.2.7', 'fd00::7'],
    names: ['plates.test'],
  }));

  it.each([
    '192.0.2.7:8787',
    '[fd00::7]:8787',
    '[FD00::7]',
    '192.0.2.7',
    'localhost',
    '127.0.0.1:443',
    'plates.test',
    'PLATES.test:9',
  ])('has %s', (host) => expect(own(host)).toBe(true));

  it.each([
    '192.0.2.8',
    '192.0.2.7:80',
    'fd00::7',
    '[fd00::8]',
    'plates.test.',
    'xplates.test',
    'plates.test:',
    'plates.test:x',
    'user@plates.test',
    'plates.test/x',
    '192.0.2.7:8787:1',
    '192.0.2.7 ',
    '',
  ])('has not “%s”', (host) => expect(own(host)).toBe(false));
});

it('the announcement says that its port is taken, and nothing breaks', async () => {
  const holder = createSocket({ type: 'udp4', reuseAddr: false });
  const held = await new Promise<boolean>((resolve) => {
    holder.once('error', () => resolve(false)).bind(5353, () => resolve(true));
  });
  const reasons: string[] = [];
  const announcement = announce('shed.local', 1, (reason) => void reasons.push(reason));
  await new Promise((next) => setTimeout(next, 200));
  announcement.stop();
  if (held) expect(reasons).toEqual([expect.stringContaining('EADDRINUSE')]);
  holder.close();
});

it('the announcement never throws, and ends', async () => {
  const reasons: string[] = [];
  const fail = (reason: string) => void reasons.push(reason);
  const two = [announce('shed.local', 1, fail), announce('shed.local', 2, fail)];
  await new Promise((next) => setTimeout(next, 200));
  for (const announcement of two) announcement.stop();
  for (const announcement of two) announcement.stop();
  await new Promise((next) => setTimeout(next, 100));
  expect(reasons.length).toBeLessThanOrEqual(2);
});
