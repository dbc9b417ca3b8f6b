import type { Context } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import type { Env } from './deps.ts';
import { ProblemError } from './problem.ts';

/** The longest that browsers keep a cookie, 400 days in s (RFC 6265bis). */
const COOKIE_SECONDS = 400 * 86_400;

/** Hands the dashboard its token where no script can read it. */
export function setTokenCookie(c: Context<Env>, token: string): void {
  const { scheme, path } = c.env.site;
  setCookie(c, cookieName(c), token, {
    httpOnly: true,
    sameSite: 'Strict',
    secure: scheme === 'https',
    path,
    maxAge: COOKIE_SECONDS,
  });
}

/** The token of a dashboard. Throws ProblemError when there is one, but the request is not from the dashboard's own page. */
export function tokenOfCookie(c: Context<Env>): string | undefined {
  const token = getCookie(c, cookieName(c));
  if (token !== undefined) demandOwnPage(c);
  return token;
}

/**
 * Throws ProblemError unless the browser says that a page of the dashboard asks: an extension that may read this address
 * makes it send the cookie too. Browsers say it over TLS and on loopback, so without the header nobody is let in.
 */
export function demandOwnPage(c: Context<Env>): void {
  if (c.req.header('sec-fetch-site') === 'same-origin') return;
  throw new ProblemError(403, 'foreign-origin', {
    detail:
      'Only the dashboard’s own page may ask with its cookie, and this browser did not say that it does. Open the dashboard over https, or on this machine at 127.0.0.1 or localhost, in a browser that is up to date.',
  });
}

/**
 * Cookies are shared by all ports of a host, so the name carries the port: a demo beside the daemon keeps its own. Over
 * TLS a prefix (RFC 6265bis) keeps a page over plain http from setting it.
 */
export function cookieName(c: Context<Env>): string {
  const { scheme, host, path } = c.env.site;
  const port = /:(\d+)$/.exec(host)?.[1] ?? (scheme === 'https' ? '443' : '80');
  const prefix = scheme === 'http' ? '' : path === '/' ? '__Host-' : '__Secure-';
  return `${prefix}platewright-${port}`;
}
