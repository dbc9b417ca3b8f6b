import { hash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';
import { BASE32, checkFrom, checkText } from '@platewright/core/protocol/check.ts';
import { uuidV7 } from '@platewright/core/records/uuid.ts';

const CODE_LENGTH = 8;

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

/** What the store keeps of a secret; looking it up tells nothing about the secret by its timing. */
export function sha256(secret: string): string {
  return hash('sha256', secret, 'hex');
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
