import { hash, randomBytes, randomInt, scrypt, timingSafeEqual } from 'node:crypto';
import { BASE32, checkFrom, checkText } from '@platewright/core/protocol/check.ts';
import { uuidV7 } from '@platewright/core/records/uuid.ts';

const CODE_LENGTH = 8;

/**
 * OWASP Password Storage Cheat Sheet: 32 MiB, and about a tenth of a second. All codes, guessed in ten minutes from what is
 * kept of one, would take a hundred million processors. The sheet's 16 MiB would do as well, but glibc holds back blocks as
 * large as any below 32 MiB that was freed, which kept tens of MB.
 */
const CODE_COST = { N: 2 ** 15, r: 8, p: 3, maxmem: 2 ** 26 };

/** 256 random bits. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** 40 random bits, shown as `XXXX-XXXX`. */
export function newCode(): string {
  const text = Array.from({ length: CODE_LENGTH }, () => BASE32[randomInt(BASE32.length)]).join('');
  return `${text.slice(0, 4)}-${text.slice(4)}`;
}

/** A code as typed, with what people mistake for each other put right. */
export function readCode(typed: string): string {
  return typed.toUpperCase().replace(/[\s-]/g, '').replaceAll('O', '0').replace(/[IL]/g, '1');
}

/** What the store keeps of a pairing code: a salt and the slow hash made with it. */
export async function hashCode(typed: string): Promise<string> {
  const salt = randomBytes(16);
  const key = await stretch(typed, salt);
  return `${salt.toString('base64url')}:${key.toString('base64url')}`;
}

/** Which of the hashes that are kept is that of a code as it was typed; null for none. */
export async function hashOfCode(typed: string, kept: readonly string[]): Promise<string | null> {
  for (const text of kept) {
    const [salt = '', key = ''] = text.split(':');
    const made = await stretch(typed, Buffer.from(salt, 'base64url'));
    if (equalInConstantTime(made.toString('base64url'), key)) return text;
  }
  return null;
}

function stretch(typed: string, salt: Uint8Array): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    scrypt(readCode(typed), salt, 32, CODE_COST, (error, key) => (error ? reject(error) : resolve(key)));
  });
}

/** What the store keeps of a token; looking it up tells nothing about the token by its timing. */
export function sha256(token: string): string {
  return hash('sha256', token, 'hex');
}

/** The short check of a pairing, as the other end works it out as well. */
export function pairingCheck(key: string, device: string): string {
  return checkFrom(hash('sha256', checkText(key, device), 'buffer'));
}

export function equalInConstantTime(a: string, b: string): boolean {
  return a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b));
}

export function newId(nowMs: number): string {
  return uuidV7(nowMs, randomBytes(10));
}

/** A device's id, which stands in clocks and so has no hyphens. */
export function newDeviceId(nowMs: number): string {
  return newId(nowMs).replaceAll('-', '');
}
