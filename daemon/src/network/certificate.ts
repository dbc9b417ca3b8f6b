import { createPrivateKey, hash, X509Certificate } from 'node:crypto';
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeCertificate } from './make-certificate.ts';

/** Key and certificate in one file, so that the two always belong together. */
const FILE = 'tls.pem';
const RENEW_MS = 30 * 86_400_000;

/** What a TLS server needs, in PEM. */
export interface Certificate {
  key: string;
  cert: string;
}

interface Wanted {
  /** Host names that it must be good for. */
  names: readonly string[];
  /** Addresses that it is made for; a router may give others later, and it stays. */
  addresses: readonly string[];
}

/**
 * The certificate kept in a folder, made when there is none, and renewed when it ends within 30 days or lacks a name. The
 * key stays the same over renewals.
 */
export async function keptCertificate(folder: string, wanted: Wanted, nowMs: number): Promise<Certificate> {
  const path = join(folder, FILE);
  const kept = existsSync(path) ? readPem(readFileSync(path, 'utf8')) : null;
  if (kept !== null && isGood(kept, wanted.names, nowMs)) return kept;
  const made = await makeCertificate([...wanted.names, ...wanted.addresses], nowMs, kept?.key ?? null);
  const fresh = `${path}.new`;
  // Made anew, so that its mode is ours from the first byte on.
  rmSync(fresh, { force: true });
  writeFileSync(fresh, `${made.key.trim()}\n${made.cert.trim()}\n`, { mode: 0o600, flag: 'wx' });
  renameSync(fresh, path);
  return made;
}

/** SHA-256 of a certificate as browsers show it, `AB:CD:…`, and of its public key (SPKI) in hex. */
export function fingerprints({ cert }: Certificate): { certificate: string; key: string } {
  const { fingerprint256, publicKey } = new X509Certificate(cert);
  const spki = publicKey.export({ type: 'spki', format: 'der' });
  return { certificate: fingerprint256, key: hash('sha256', spki, 'hex') };
}

/** Whether a key and a certificate belong together; false as well when they can't be read. */
export function isPair({ key, cert }: Certificate): boolean {
  try {
    return new X509Certificate(cert).checkPrivateKey(createPrivateKey(key));
  } catch {
    return false;
  }
}

function readPem(text: string): Certificate | null {
  const key = /-----BEGIN (?:EC )?PRIVATE KEY-----[^-]+-----END (?:EC )?PRIVATE KEY-----/.exec(text)?.[0];
  const cert = /-----BEGIN CERTIFICATE-----[^-]+-----END CERTIFICATE-----/.exec(text)?.[0];
  if (key === undefined || cert === undefined || !isPair({ key, cert })) return null;
  return { key, cert };
}

function isGood({ cert }: Certificate, names: readonly string[], nowMs: number): boolean {
  const parsed = new X509Certificate(cert);
  const { validFromDate, validToDate } = parsed;
  return (
    validFromDate.getTime() <= nowMs &&
    validToDate.getTime() - nowMs > RENEW_MS &&
    names.every((name) => parsed.checkHost(name) !== undefined)
  );
}
