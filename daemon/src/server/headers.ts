import type { MiddlewareHandler } from 'hono';

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
export const secureHeaders: MiddlewareHandler = async (c, next) => {
  for (const [name, value] of HEADERS) c.header(name, value);
  if (c.req.path.startsWith('/v1/')) c.header('cache-control', 'no-store');
  await next();
};
