import { hasCodeForm } from '@platewright/core/protocol/code.ts';

/** A daemon's address, without a slash at the end, and a pairing code. */
export interface PairText {
  address: string;
  code: string;
}

/** Where `npm start` serves. */
const USUAL_ADDRESS = 'http://127.0.0.1:8787';
/** Hosts that this extension may ask without a further permission. */
const OWN_HOSTS = ['127.0.0.1', 'localhost'];

/**
 * Reads what a person types or pastes to pair: a code, an address and a code, or the dashboard's link with a code in it.
 * Null when there is no code.
 */
export function readPairText(text: string): PairText | null {
  const words = text
    .trim()
    .replace(/\/?#pair=/i, ' ')
    .split(/\s+/);
  const code = words.findLast(hasCodeForm);
  if (code === undefined) return null;
  const address = words.find((word) => word !== code && /[.:[]|localhost/i.test(word));
  const url = addressOf(address ?? USUAL_ADDRESS);
  return url === null ? null : { address: url, code };
}

/** The pattern of the host permission that an address needs beyond those this extension has; null when none. */
export function permissionFor(address: string): string | null {
  const { protocol, hostname } = new URL(address);
  return protocol === 'http:' && OWN_HOSTS.includes(hostname) ? null : `${protocol}//${hostname}/*`;
}

/** Why nothing is sent to an address: in clear, a whole network could read token and records. Null when it may be. */
export function whyNotTo(address: string): string | null {
  const { protocol, hostname } = new URL(address);
  if (protocol === 'https:' || OWN_HOSTS.includes(hostname)) return null;
  return `Over http everybody between here and ${hostname} could read your records. Start the daemon there with --lan, and type the https address that it prints.`;
}

function addressOf(text: string): string | null {
  const url = URL.parse(/^https?:\/\//i.test(text) ? text : `${schemeFor(text)}://${text}`);
  if (url === null || url.username !== '') return null;
  return `${url.origin}${url.pathname}`.replace(/\/+$/, '');
}

/** A daemon speaks plainly on its own machine only. */
function schemeFor(text: string): string {
  return OWN_HOSTS.some((host) => new RegExp(`^${host}(?=[:/]|$)`, 'i').test(text)) ? 'http' : 'https';
}
