import { hostname, networkInterfaces } from 'node:os';

/** How long the list of own addresses is taken as it was, ms: a router may give another one at any time. */
const FRESH_MS = 5000;

/** Addresses of this machine in its networks, IPv4 first, without loopback and those that no name or person would use. */
export function ownAddresses(): string[] {
  const found = Object.values(networkInterfaces())
    .flatMap((entries) => entries ?? [])
    .filter(({ internal, address }) => !internal && !address.startsWith('fe80:'));
  return [
    ...found.filter(({ family }) => family === 'IPv4'),
    ...found.filter(({ family }) => family === 'IPv6'),
  ].map(({ address }) => address.toLowerCase());
}

/** The same list, asked of the system at most every few seconds. */
export function freshAddresses(now: () => number): () => readonly string[] {
  let read = Number.NEGATIVE_INFINITY;
  let addresses: readonly string[] = [];
  return () => {
    // The clock may have been set back since.
    if (Math.abs(now() - read) < FRESH_MS) return addresses;
    read = now();
    addresses = ownAddresses();
    return addresses;
  };
}

/** The name of this machine in its network, as mDNS (RFC 6762) knows it: `shed.local`. */
export function localName(): string {
  const label = (hostname().split('.')[0] ?? '').toLowerCase().replace(/[^a-z0-9-]/g, '-');
  return `${/^[a-z0-9]/.test(label) ? label : 'platewright'}.local`;
}
