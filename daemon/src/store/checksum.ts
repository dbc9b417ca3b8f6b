import { hash } from 'node:crypto';

/**
 * Checksum of a row's columns, 16 bytes: SHA-256 cut in half, over JSON with bytes in hex. Databases keep no checksum of
 * their pages, so a flipped bit would be read as if it had been written. Rows on disk carry it: it may never change.
 */
export function checksum(...columns: readonly unknown[]): Uint8Array {
  const plain = columns.map((value) =>
    value instanceof Uint8Array ? Buffer.from(value).toString('hex') : value,
  );
  // Out of hex, because Node takes twice as long to give bytes.
  return Buffer.from(sha256(JSON.stringify(plain)).slice(0, 32), 'hex');
}

/** SHA-256 of a text, in hex. */
export function sha256(text: string): string {
  return hash('sha256', text, 'hex');
}

/** Sum of checksums, in any order: adding one a second time takes it out again. */
export function addUp(...sums: readonly Uint8Array[]): Uint8Array {
  const total = new Uint8Array(16);
  for (const sum of sums) {
    for (let i = 0; i < 16; i++) total[i] = (total[i] ?? 0) ^ (sum[i] ?? 0);
  }
  return total;
}

export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return Buffer.compare(a, b) === 0;
}
