import type { Rights } from '@platewright/core/protocol/devices.ts';
import { checksum, sameBytes } from './checksum.ts';
import { bytes, damaged, keepable, maybe, type Row, text, whole } from './rows.ts';
import type { StoredDevice } from './store.ts';

/** Columns of a device, in the order in which they are summed and written. */
export const DEVICE_COLUMNS =
  'id, name, kind, origin, token_hash, paired_at, last_seen_at, revoked_at, athlete, access, checksum';

/** Values in the order of DEVICE_COLUMNS. */
export function deviceValues(device: StoredDevice) {
  const { id, name, kind, origin, tokenHash, pairedAt, lastSeenAt, revokedAt, rights } = device;
  const own = [id, keepable(name), kind, origin, tokenHash, pairedAt, lastSeenAt, revokedAt] as const;
  const values = [...own, rights.athlete, rights.access] as const;
  return [...values, checksum(...values)] as const;
}

/** Throws StoreTrouble when the row is not as it was written, so that no right comes from a flipped bit. */
export function readDevice(row: Row): StoredDevice {
  const device: StoredDevice = {
    id: text(row, 'id'),
    name: text(row, 'name'),
    kind: text(row, 'kind') === 'extension' ? 'extension' : 'dashboard',
    origin: maybe(row, 'origin', text),
    tokenHash: text(row, 'token_hash'),
    pairedAt: whole(row, 'paired_at'),
    lastSeenAt: maybe(row, 'last_seen_at', whole),
    revokedAt: maybe(row, 'revoked_at', whole),
    rights: readRights(row),
  };
  if (sameBytes(bytes(row, 'checksum'), deviceValues(device)[10])) return device;
  throw damaged(`device ${device.id}: its checksum does not match`);
}

export function readRights(row: Row): Rights {
  return {
    athlete: maybe(row, 'athlete', text),
    access: text(row, 'access') === 'write' ? 'write' : 'read',
  };
}
