import type { Context } from 'hono';
import type { Env } from './deps.ts';

/** No Strict-Transport-Security: on loopback there is no TLS to go back to. */
const HEADERS = Object.entries({
  'content-security-policy':
    "default-src 'self'; base-uri 'none'; object-src 'none'; form-action 'self'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
});

/** Headers that keep a page of this daemon to itself, and answers out of caches. */
export function secureHeaders(c: Context<Env>): void {
  const { outgoing } = c.env;
  // Node's own list is a third of the cost; what a route sets by the same name goes before it in both.
  const set =
    outgoing === undefined
      ? (name: string, value: string) => c.header(name, value)
      : (name: string, value: string) => outgoing.setHeader(name, value);
  for (const [name, value] of HEADERS) set(name, value);
  if (c.req.path.startsWith('/v1/')) set('cache-control', 'no-store');
}
