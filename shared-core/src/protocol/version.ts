/**
 * The wire's version. One line for each version:
 * 1 — push, pull, snapshot, records, views, weekly call, devices, pairing.
 */
export const PROTOCOL = 1;
export const MIN_PROTOCOL = 1;
/** Request header in which a device says which version it speaks. */
export const PROTOCOL_HEADER = 'platewright-protocol';
