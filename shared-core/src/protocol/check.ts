/** Crockford's base 32: no I, L, O, U. */
export const BASE32 = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/**
 * What both ends hash (SHA-256) after pairing, to see that they speak of the same device and the same daemon. `key` is
 * the SHA-256 of the daemon's public key in hex, empty where there is no TLS.
 */
export function checkText(key: string, device: string): string {
  return `platewright pairing ${key} ${device}`;
}

/** The first 40 bits of a hash as people compare them, `XXXX-XXXX`. */
export function checkFrom(sha256: Uint8Array): string {
  const bits = [...sha256.subarray(0, 5)].map((byte) => byte.toString(2).padStart(8, '0')).join('');
  const text = (bits.match(/.{5}/g) ?? []).map((five) => BASE32[Number.parseInt(five, 2)]).join('');
  return `${text.slice(0, 4)}-${text.slice(4)}`;
}
