import type { Rights } from './devices.ts';

/** Rights of who keeps the store. */
export const OWNER: Rights = { athlete: null, access: 'write' };

/** Who may do everything: manage devices, see and write for every athlete. */
export function isOwner({ athlete, access }: Rights): boolean {
  return athlete === null && access === 'write';
}

/** Whether a device may see an athlete's records. */
export function maySee(rights: Rights, athlete: string): boolean {
  return rights.athlete === null || rights.athlete === athlete;
}

/** Why a device may not write for an athlete, for the person who reads it; null when it may. */
export function whyNoWrite(rights: Rights, athlete: string): string | null {
  if (!maySee(rights, athlete)) return 'This device may not see that athlete. Pair it again for another one.';
  if (rights.access === 'write') return null;
  return 'This device may look, not write. Pair it again with a code that lets it write.';
}

/** Whether a device may change an athlete's records. */
export function mayWrite(rights: Rights, athlete: string): boolean {
  return whyNoWrite(rights, athlete) === null;
}
