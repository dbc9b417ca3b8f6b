import { X509Certificate } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import { knownAddresses } from '../../daemon/src/cli/known-addresses.ts';
import { keepLan } from '../../daemon/src/cli/lan.ts';
import type { Certificate } from '../../daemon/src/network/certificate.ts';
import { makeCertificate } from '../../daemon/src/network/make-certificate.ts';
import { noProxy } from '../../daemon/src/server/site.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { useFolder } from '../support/use-folder.ts';

// It would speak to the network.
vi.mock('../../daemon/src/network/announce.ts', () => ({ announce: () => ({ stop: () => undefined }) }));

const folder = useFolder();

afterEach(() => {
  vi.useRealTimers();
});

it('a certificate that was renewed is served, and its fingerprint is what the next device is told', async () => {
  const [cert, key] = [join(folder(), 'cert.pem'), join(folder(), 'key.pem')];
  const made = await makeCertificate(['plates.test'], Date.now(), null);
  const store = openSqliteStore(folder(), 'owner');
  const lan = { named: 'https://shed.local:8789/', fingerprint: 'that of the start', key: '00' };
  const served: Certificate[] = [];
  vi.useFakeTimers();
  const end = await keepLan(
    { lanPort: 8789, addresses: { page: 'http://127.0.0.1:8787/', lan }, renew: (c) => void served.push(c) },
    { lan: { port: 8789, own: { cert, key } }, names: [], front: noProxy },
    { folder: folder(), store },
  );
  writeFileSync(cert, made.cert);
  writeFileSync(key, made.key);
  await vi.advanceTimersByTimeAsync(86_400_000);
  end();
  expect(served.at(-1)).toEqual(made);
  const { fingerprint256 } = new X509Certificate(made.cert);
  expect((await knownAddresses(store)).lan).toEqual({ ...lan, fingerprint: fingerprint256 });
  await store.close();
});
