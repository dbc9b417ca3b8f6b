import type { Context, MiddlewareHandler } from 'hono';
import type { Env } from './deps.ts';
import { ProblemError } from './problem.ts';

const EXTENSION_ORIGIN = /^(chrome-extension|moz-extension):\/\/[A-Za-z0-9-]{1,64}$/;

/**
 * Refuses a request for another host before anything else: a page whose name was rebound to this address sends neither
 * Origin nor Sec-Fetch headers, so only Host tells. Answers without a body, because that page could read it.
 */
export function hostGuard(isOwnHost: (host: string) => boolean): MiddlewareHandler<Env> {
  return async (c, next) => (isOwnHost(c.get('site').host) ? await next() : c.body(null, 421));
}

/**
 * Lets in the dashboard's own origin and extensions, nothing else. A write must say its Origin; a GET may lack it, as
 * an extension's with host permission does.
 */
export const originGuard: MiddlewareHandler<Env> = async (c, next) => {
  const origin = c.req.header('origin');
  const extension = origin !== undefined && EXTENSION_ORIGIN.test(origin) ? origin : null;
  c.set('extension', extension);
  if (extension === null) {
    const { scheme, host } = c.get('site');
    const own = origin === `${scheme}://${host}`;
    if (origin !== undefined && !own) throw foreign();
    if (origin === undefined && !isRead(c)) throw foreign();
    if (isFromOtherSite(c) && !isPageVisit(c)) throw foreign();
    return await next();
  }
  if (c.req.path.startsWith('/v1/')) {
    c.header('access-control-allow-origin', extension);
    c.header('vary', 'Origin');
    if (c.req.method === 'OPTIONS') return preflight(c);
  }
  return await next();
};

function isRead(c: Context): boolean {
  return c.req.method === 'GET' || c.req.method === 'HEAD';
}

/** Other ports of this machine count as the same site, so `same-site` is foreign too. */
function isFromOtherSite(c: Context): boolean {
  const site = c.req.header('sec-fetch-site');
  return site === 'cross-site' || site === 'same-site';
}

/** A link to the dashboard that was followed in a tab. */
function isPageVisit(c: Context): boolean {
  return (
    isRead(c) &&
    c.req.header('sec-fetch-mode') === 'navigate' &&
    c.req.header('sec-fetch-dest') === 'document' &&
    !c.req.path.startsWith('/v1/')
  );
}

/** An extension that was not granted this address as a host asks first. */
function preflight(c: Context): Response {
  return c.body(null, 204, {
    'access-control-allow-methods': 'GET, POST, DELETE',
    'access-control-allow-headers': 'authorization, content-type, platewright-protocol',
    'access-control-max-age': '600',
  });
}

function foreign(): ProblemError {
  return new ProblemError(403, 'foreign-origin', {
    detail:
      'Only the dashboard and a paired extension may ask. Open the dashboard at the address the daemon printed.',
  });
}
