import type { Context } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import type { Env } from './deps.ts';

/** The longest that browsers keep a cookie, 400 days in s (RFC 6265bis). */
const COOKIE_SECONDS = 400 * 86_400;

/** Hands the dashboard its token where no script can read it. */
export function setTokenCookie(c: Context<Env>, token: string): void {
  const { scheme, path } = c.get('site');
  setCookie(c, cookieName(c), token, {
    httpOnly: true,
    sameSite: 'Strict',
    secure: scheme === 'https',
    path,
    maxAge: COOKIE_SECONDS,
  });
}

export function tokenOfCookie(c: Context<Env>): string | undefined {
  return getCookie(c, cookieName(c));
}

/**
 * Cookies are shared by all ports of a host, so the name carries the port: a demo beside the daemon keeps its own. Over
 * TLS a prefix (RFC 6265bis) keeps a page over plain http from setting it.
 */
function cookieName(c: Context<Env>): string {
  const { scheme, host, path } = c.get('site');
  const port = /:(\d+)$/.exec(host)?.[1] ?? (scheme === 'https' ? '443' : '80');
  const prefix = scheme === 'http' ? '' : path === '/' ? '__Host-' : '__Secure-';
  return `${prefix}platewright-${port}`;
}
