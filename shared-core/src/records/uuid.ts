/**
 * A UUIDv7 (RFC 9562, 5.7) of an instant in ms since 1970 and at least 10 random bytes. Ids made later sort later,
 * which keeps indexes short to walk; nothing else may be read out of the time in it.
 */
export function uuidV7(ms: number, random: Uint8Array): string {
  const hex = [...random.subarray(0, 10)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  if (hex.length < 20) throw new RangeError('a UUIDv7 needs 10 random bytes');
  const time = Math.max(0, Math.floor(ms)).toString(16).padStart(12, '0');
  // Two bits of the variant, 10xx, in front of the random part.
  const variant = (8 + (Number.parseInt(hex.slice(3, 4), 16) % 4)).toString(16);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hex.slice(0, 3)}-${variant}${hex.slice(4, 7)}-${hex.slice(7, 19)}`;
}
