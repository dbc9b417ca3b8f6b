import type { Context, MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import type { Store, StoredDevice } from '../store/store.ts';
import { StoreTrouble } from '../store/trouble.ts';
import type { Deps, Env } from './deps.ts';
import { ProblemError } from './problem.ts';
import { equalInConstantTime, sha256 } from './secrets.ts';

/** A device's last sight is written at most this often, ms. */
const SEEN_EVERY_MS = 60_000;

/** The longest that browsers keep a cookie, 400 days in s (RFC 6265bis). */
const COOKIE_SECONDS = 400 * 86_400;

/** Lets in paired devices only: an extension by its bearer token, the dashboard by its cookie. */
export function requireDevice({ store, now }: Pick<Deps, 'store' | 'now'>): MiddlewareHandler<Env> {
  return async (c, next) => {
    const device = await deviceOf(c, store);
    if (device === null) throw notPaired();
    if (now() - (device.lastSeenAt ?? 0) >= SEEN_EVERY_MS) {
      await store.putDevice({ ...device, lastSeenAt: now() }).catch(passOver);
    }
    c.set('device', device);
    await next();
  };
}

/** That a device was seen is not worth a refusal: a store that can't be written is still read. */
function passOver(error: unknown): void {
  if (!(error instanceof StoreTrouble)) throw error;
}

/** Hands the dashboard its token where no script can read it. */
export function setTokenCookie(c: Context, token: string): void {
  setCookie(c, cookieName(c), token, {
    httpOnly: true,
    sameSite: 'Strict',
    path: '/',
    maxAge: COOKIE_SECONDS,
  });
}

async function deviceOf(c: Context<Env>, store: Store): Promise<StoredDevice | null> {
  const extension = c.get('extension');
  const bearer = /^Bearer ([\w-]{43})$/i.exec(c.req.header('authorization') ?? '')?.[1];
  const kind = extension !== null || bearer !== undefined ? 'extension' : 'dashboard';
  const token = kind === 'extension' ? bearer : getCookie(c, cookieName(c));
  if (token === undefined) return null;
  const hash = sha256(token);
  const device = await store.deviceByToken(hash);
  if (device === null || !equalInConstantTime(device.tokenHash, hash)) return null;
  if (device.revokedAt !== null || device.kind !== kind) return null;
  return extension === null || device.origin === extension ? device : null;
}

/** Cookies are shared by all ports of a host, so the name carries the port: a demo beside the daemon keeps its own. */
function cookieName(c: Context): string {
  return `platewright-${/:(\d+)$/.exec(c.req.header('host') ?? '')?.[1] ?? '80'}`;
}

function notPaired(): ProblemError {
  return new ProblemError(401, 'not-paired', {
    detail: 'This device is not paired, or was removed. Run platewright pair, and enter the code here.',
    headers: { 'www-authenticate': 'Bearer realm="platewright"' },
  });
}
