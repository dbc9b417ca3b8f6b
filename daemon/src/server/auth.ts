import type { Context, MiddlewareHandler } from 'hono';
import type { Store, StoredDevice } from '../store/store.ts';
import { StoreTrouble } from '../store/trouble.ts';
import { tokenOfCookie } from './cookie.ts';
import type { Deps, Env } from './deps.ts';
import { ProblemError } from './problem.ts';
import { demandOwner } from './rights.ts';
import { equalInConstantTime, sha256 } from './secrets.ts';

/** A device's last sight is written at most this often, ms. */
const SEEN_EVERY_MS = 60_000;

/** Lets in paired devices only: an extension by its bearer token, the dashboard by its cookie. */
export function requireDevice({ store, now }: Pick<Deps, 'store' | 'now'>): MiddlewareHandler<Env> {
  return async (c, next) => {
    const device = await deviceOf(c, store);
    if (device === null) throw notPaired();
    if (Math.abs(now() - (device.lastSeenAt ?? 0)) >= SEEN_EVERY_MS) {
      await store.putDevice({ ...device, lastSeenAt: now() }).catch(passOver);
    }
    c.set('device', device);
    c.env.seen.device = device.id;
    await next();
  };
}

/** After requireDevice: lets in owners only. */
export const ownersOnly: MiddlewareHandler<Env> = async (c, next) => {
  demandOwner(c.get('device').rights);
  await next();
};

/** That a device was seen is not worth a refusal: a store that can't be written is still read. */
function passOver(error: unknown): void {
  if (!(error instanceof StoreTrouble)) throw error;
}

/** The device that asks, by the secret it holds; null when there is none, or it was let go. */
export async function deviceOf(c: Context<Env>, store: Store): Promise<StoredDevice | null> {
  const { extension } = c.env;
  const bearer = /^Bearer ([\w-]{43})$/i.exec(c.req.header('authorization') ?? '')?.[1];
  const kind = extension !== null || bearer !== undefined ? 'extension' : 'dashboard';
  const token = kind === 'extension' ? bearer : tokenOfCookie(c);
  if (token === undefined) return null;
  const hash = sha256(token);
  const device = await store.deviceByToken(hash);
  if (device === null || !equalInConstantTime(device.tokenHash, hash)) return null;
  if (device.revokedAt !== null || device.kind !== kind) return null;
  return extension === null || device.origin === extension ? device : null;
}

function notPaired(): ProblemError {
  return new ProblemError(401, 'not-paired', {
    detail:
      'This device is not paired, or its key was taken back. Run npx platewright pair, as the daemon’s terminal words it, and enter the code here.',
    headers: { 'www-authenticate': 'Bearer realm="platewright"' },
  });
}
