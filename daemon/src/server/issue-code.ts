import type { PairingCode, Rights } from '@platewright/core/protocol/devices.ts';
import { OWNER } from '@platewright/core/protocol/rights.ts';
import { CODE_LIFE_MS } from '../store/code-row.ts';
import type { Store } from '../store/store.ts';
import { hashCode, newCode } from './secrets.ts';

/** A fresh pairing code, good once and for ten minutes. */
export async function issueCode(store: Store, nowMs: number, rights: Rights = OWNER): Promise<PairingCode> {
  const code = newCode();
  const expiresAt = nowMs + CODE_LIFE_MS;
  await store.putCode(await hashCode(code), expiresAt, rights);
  return { code, expiresAt };
}
