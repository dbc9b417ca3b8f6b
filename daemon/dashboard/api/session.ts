import { checkFrom, checkText } from '@platewright/core/protocol/check.ts';
import {
  type Device,
  devicesResponseSchema,
  type PairingCode,
  pairingCodeSchema,
  pairResponseSchema,
  type Rights,
  type Session,
  sessionSchema,
} from '@platewright/core/protocol/devices.ts';
import { get, post, tell } from './request.ts';

export function readSession(): Promise<Session> {
  return get('session', sessionSchema);
}

/**
 * Trades a pairing code for this browser's cookie. Gives the check to compare with the daemon's; null where there is no
 * TLS, because then the daemon is on this machine.
 */
export async function pair(code: string, name: string): Promise<string | null> {
  const { key, device } = await post('pair', { code, name, kind: 'dashboard' }, pairResponseSchema);
  if (key === '' || location.protocol !== 'https:') return null;
  const text = new TextEncoder().encode(checkText(key, device));
  return checkFrom(new Uint8Array(await crypto.subtle.digest('SHA-256', text)));
}

export async function readDevices(): Promise<readonly Device[]> {
  return (await get('devices', devicesResponseSchema)).devices;
}

/** A fresh code with which another device is paired, and which gives it these rights. */
export function newPairingCode(rights: Rights): Promise<PairingCode> {
  return post('devices/pairing', { rights }, pairingCodeSchema);
}

export function revokeDevice(id: string): Promise<void> {
  return tell('DELETE', `devices/${encodeURIComponent(id)}`);
}
