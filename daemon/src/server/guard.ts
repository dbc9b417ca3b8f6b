import type { Context, MiddlewareHandler } from 'hono';
import type { Deps, Env } from './deps.ts';
import { secureHeaders } from './headers.ts';
import { limitBody } from './limit-body.ts';
import { ProblemError } from './problem.ts';
import { type Site, siteOf } from './site.ts';

const EXTENSION_ORIGIN = /^(chrome-extension|moz-extension):\/\/[A-Za-z0-9-]{1,64}$/;

/**
 * What stands before every route, as one step, because each step of a chain costs every request. Another host is refused
 * before anything else: a page whose name was rebound to this address sends neither Origin nor Sec-Fetch headers, so only
 * Host tells. The answer has no body, because that page could read it.
 */
export function guard({ front, isOwnHost }: Pick<Deps, 'front' | 'isOwnHost'>): MiddlewareHandler<Env> {
  return async (c, next) => {
    const { url } = c.req;
    const site = siteOf({ url, header: (name) => c.req.header(name), socket: c.env.incoming?.socket }, front);
    if (!isOwnHost(site.host)) return c.body(null, 421);
    c.set('site', site);
    secureHeaders(c);
    const extension = extensionOf(c);
    c.set('extension', extension);
    if (extension === null) demandOwnOrigin(c, site);
    else if (c.req.path.startsWith('/v1/')) {
      c.header('access-control-allow-origin', extension);
      c.header('vary', 'Origin');
      if (c.req.method === 'OPTIONS') return preflight(c);
    }
    return await limitBody(c, next);
  };
}

/** Origin of the extension that asks. */
function extensionOf(c: Context): string | null {
  const origin = c.req.header('origin');
  return origin !== undefined && EXTENSION_ORIGIN.test(origin) ? origin : null;
}

/**
 * Lets in the dashboard's own origin and, beside extensions, nothing else. A write must say its Origin; a GET may lack
 * it, as an extension's with host permission does.
 */
function demandOwnOrigin(c: Context, { scheme, host }: Site): void {
  const origin = c.req.header('origin');
  if (origin !== undefined && origin !== `${scheme}://${host}`) throw foreign();
  if (origin === undefined && !isRead(c)) throw foreign();
  if (isFromOtherSite(c) && !isPageVisit(c)) throw foreign();
}

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
