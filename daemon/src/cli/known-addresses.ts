import * as z from 'zod/mini';
import type { Store } from '../store/store.ts';
import { PORTS } from './settings.ts';

const SETTING = 'addresses';
const USUAL_PAGE = `http://127.0.0.1:${PORTS.own}/`;

const addressesSchema = z.object({
  /** Where this machine's browsers find the dashboard, with a slash at the end. */
  page: z.string(),
  lan: z.nullable(
    z.object({
      /** Where others in the network find it, by this machine's name: its address may change any time. */
      named: z.string(),
      /** SHA-256 of the certificate, as browsers show it. */
      fingerprint: z.string(),
      /** SHA-256 of its public key in hex. */
      key: z.string(),
    }),
  ),
});

/** Where a daemon was last served: other commands have no other way to know. */
export type Addresses = z.infer<typeof addressesSchema>;

export async function keepAddresses(store: Store, addresses: Addresses): Promise<void> {
  const text = JSON.stringify(addresses);
  // A write waits for the disk.
  if ((await store.setting(SETTING)) !== text) await store.putSetting(SETTING, text);
}

export async function knownAddresses(store: Store): Promise<Addresses> {
  const kept = await store.setting(SETTING);
  const parsed = addressesSchema.safeParse(kept === null ? null : JSON.parse(kept));
  return parsed.success ? parsed.data : { page: USUAL_PAGE, lan: null };
}

/** What to type into the extension: it looks for the daemon at the usual place, so another one stands before the code. */
export function pairingText(page: string, code: string): string {
  return page === USUAL_PAGE ? code : `${page.replace(/^http:\/\/|\/$/g, '')} ${code}`;
}

/** A link that offers to pair the browser it is opened in. The code stands where it is never sent to a server. */
export function pairingLink(page: string, code: string): string {
  return `${page}#pair=${code}`;
}
