import {
  pairRequestSchema,
  type pairResponseSchema,
  type Rights,
} from '@platewright/core/protocol/devices.ts';
import { Hono } from 'hono';
import type * as z from 'zod/mini';
import type { CodeOutcome, StoredDevice } from '../../store/store.ts';
import { deviceOf } from '../auth.ts';
import { json } from '../body.ts';
import { demandOwnPage, setTokenCookie } from '../cookie.ts';
import type { Deps, Env } from '../deps.ts';
import { silent } from '../log.ts';
import { ProblemError } from '../problem.ts';
import { hashOfCode, newDeviceId, newToken, pairingCheck, sha256 } from '../secrets.ts';
import { createTurns } from '../turns.ts';

/** Failed tries in this time before every try is refused: two codes' worth, so that a typing person is not hit. */
const FAILURES_ALLOWED = 10;
const FAILURE_WINDOW_MS = 10 * 60_000;

/** A single-use code makes a device. */
export function pairingRoutes({ store, keys, now, key, log = silent, paired: tell }: Deps) {
  let failures: number[] = [];
  // Tries that come at once must not pass by the count.
  const inTurn = createTurns();

  async function useCode(typed: string): Promise<Rights> {
    // Those after now were before the clock was set back.
    failures = failures.filter((at) => Math.abs(now() - at) < FAILURE_WINDOW_MS);
    const oldest = failures[0];
    if (oldest !== undefined && failures.length >= FAILURES_ALLOWED)
      throw tooMany(oldest + FAILURE_WINDOW_MS - now());
    const hash = await hashOfCode(typed, await store.waitingCodes(now()));
    const outcome = await store.takeCode(hash, now());
    if (typeof outcome === 'object') return outcome;
    failures.push(now());
    throw wrongCode(outcome);
  }

  return new Hono<Env>().post('/pair', json(pairRequestSchema), async (c) => {
    const { code, name, kind } = c.req.valid('json');
    const origin = c.env.extension;
    if ((kind === 'extension') !== (origin !== null)) throw wrongOrigin();
    if (kind === 'dashboard') demandOwnPage(c);
    const before = await deviceOf(c, store);
    const rights = await inTurn(() => useCode(code));
    const token = newToken();
    const device: StoredDevice = {
      id: newDeviceId(now()),
      name,
      kind,
      origin,
      tokenHash: sha256(token),
      rights,
      pairedAt: now(),
      lastSeenAt: now(),
      revokedAt: null,
    };
    await store.putDevice(device);
    log('warn', 'paired', { device: device.id, kind });
    // A browser that pairs again gives its earlier key back.
    if (before !== null) await keys.takeBack(before, device.id);
    tell(device, pairingCheck(key, device.id));
    if (kind === 'dashboard') setTokenCookie(c, token);
    const paired: z.infer<typeof pairResponseSchema> = { device: device.id, store: store.id, key };
    return c.json(kind === 'extension' ? { ...paired, token } : paired, 200);
  });
}

function wrongCode(outcome: Exclude<CodeOutcome, Rights>): ProblemError {
  return outcome === 'wrong'
    ? new ProblemError(403, 'wrong-code', {
        detail: 'That is not the code. Look again; after five wrong tries it is no longer good.',
      })
    : new ProblemError(403, 'no-code', {
        detail:
          'No code waits: it was used, is over ten minutes old, or had five wrong tries. For a new one run npx platewright pair, as the daemon’s terminal words it.',
      });
}

function tooMany(waitMs: number): ProblemError {
  return new ProblemError(429, 'too-many-tries', {
    detail: 'Too many wrong codes. Wait ten minutes, then ask for a new code.',
    headers: { 'retry-after': String(Math.ceil(waitMs / 1000)) },
  });
}

function wrongOrigin(): ProblemError {
  return new ProblemError(403, 'foreign-origin', {
    detail: 'An extension pairs from its own page, a dashboard from the daemon’s.',
  });
}
