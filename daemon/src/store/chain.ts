import { createHash } from 'node:crypto';

/** Hash of a row of the change log, SHA-256 over the hash before it, its number and its text. */
export function chainHash(before: Uint8Array, seq: number, body: string): Uint8Array {
  return createHash('sha256').update(before).update(`${seq}\n`).update(body).digest();
}
