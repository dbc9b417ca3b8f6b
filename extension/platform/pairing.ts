import { rightsSchema } from '@platewright/core/protocol/devices.ts';
import { browser } from 'wxt/browser';
import * as z from 'zod/mini';

const pairingSchema = z.object({
  /** Where the daemon is, without a slash at the end. */
  address: z.string(),
  token: z.string(),
  device: z.string(),
  store: z.string(),
  /** SHA-256 of the daemon's public key in hex, empty without TLS; absent where an older daemon paired. */
  key: z.optional(z.string()),
  /** What it was allowed then. */
  rights: z.optional(rightsSchema),
  /** False as long as the person has not said what becomes of another store's records; see the note `choice`. */
  joined: z._default(z.boolean(), true),
  /** The athlete that this browser logs for, when the store holds several. */
  athlete: z.optional(z.string()),
});

/** What this browser got when it was paired. Kept where only pages of this extension can read it. */
export type Pairing = z.infer<typeof pairingSchema>;

const ITEM = 'pairing';

export async function readPairing(): Promise<Pairing | null> {
  const parsed = pairingSchema.safeParse((await browser.storage.local.get(ITEM))[ITEM]);
  return parsed.success ? parsed.data : null;
}

export async function savePairing(pairing: Pairing): Promise<void> {
  await browser.storage.local.setAccessLevel({ accessLevel: 'TRUSTED_CONTEXTS' });
  await browser.storage.local.set({ [ITEM]: pairing });
}

export async function changePairing(change: Partial<Pairing>): Promise<void> {
  const pairing = await readPairing();
  if (pairing !== null) await savePairing({ ...pairing, ...change });
}

export async function forgetPairing(): Promise<void> {
  await browser.storage.local.remove(ITEM);
}
