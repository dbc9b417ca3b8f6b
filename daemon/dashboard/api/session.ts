import {
  type Device,
  devicesResponseSchema,
  type PairingCode,
  pairingCodeSchema,
  pairResponseSchema,
  type Session,
  sessionSchema,
} from '@platewright/core/protocol/devices.ts';
import { get, post, tell } from './request.ts';

export function readSession(): Promise<Session> {
  return get('session', sessionSchema);
}

/** Trades a pairing code for this browser's cookie. */
export async function pair(code: string, name: string): Promise<void> {
  await post('pair', { code, name, kind: 'dashboard' }, pairResponseSchema);
}

export async function readDevices(): Promise<readonly Device[]> {
  return (await get('devices', devicesResponseSchema)).devices;
}

/** A fresh code with which another device is paired. */
export function newPairingCode(): Promise<PairingCode> {
  return post('devices/pairing', {}, pairingCodeSchema);
}

export function revokeDevice(id: string): Promise<void> {
  return tell('DELETE', `devices/${encodeURIComponent(id)}`);
}
