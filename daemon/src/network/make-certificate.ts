import { createPrivateKey, createPublicKey } from 'node:crypto';
import { isIP } from 'node:net';

const DAY_MS = 86_400_000;
/** Some systems take no certificate that lives longer than 825 days. */
const LIFE_DAYS = 820;

/**
 * A self-signed certificate (EC P-256) for host names and addresses, valid from a day ago, because clocks differ. With a
 * new key, or with `key` (PEM) where one is kept.
 */
export async function makeCertificate(
  names: readonly string[],
  nowMs: number,
  key: string | null,
): Promise<{ key: string; cert: string }> {
  // Loaded only when one is made: it brings a whole library of certificates.
  const { generate } = await import('selfsigned');
  const made = await generate([{ name: 'commonName', value: 'Platewright' }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    notBeforeDate: new Date(nowMs - DAY_MS),
    notAfterDate: new Date(nowMs + LIFE_DAYS * DAY_MS),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      { name: 'subjectAltName', altNames: ['localhost', '127.0.0.1', ...names].map(alternativeName) },
    ],
    ...(key === null ? {} : { keyPair: { privateKey: key, publicKey: publicPem(key) } }),
  });
  return { key: made.private, cert: made.cert };
}

function alternativeName(name: string) {
  return isIP(name) === 0 ? ({ type: 2, value: name } as const) : ({ type: 7, ip: name } as const);
}

function publicPem(key: string): string {
  return String(createPublicKey(createPrivateKey(key)).export({ type: 'spki', format: 'pem' }));
}
