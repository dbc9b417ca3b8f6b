import { hash } from 'node:crypto';

/** Hash of a row of the change log, SHA-256 over a line each of the hash before it in hex, its number and its text. */
export function chainHash(before: Uint8Array, seq: number, body: string): Uint8Array {
  return hash('sha256', `${Buffer.from(before).toString('hex')}\n${seq}\n${body}`, 'buffer');
}
