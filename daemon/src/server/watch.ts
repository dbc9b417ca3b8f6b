import type { MiddlewareHandler } from 'hono';
import { routePath } from 'hono/route';
import type { StoredDevice } from '../store/store.ts';
import type { Env } from './deps.ts';
import type { Log, LogLevel } from './log.ts';
import type { Metrics } from './metrics.ts';

/** Refusals that someone who looks after the daemon may want to know of. */
const REFUSALS = new Set([401, 403, 421, 429]);

/** Counts each answer, and logs it by its route's pattern, because an address itself may name records. */
export function watchRequests(metrics: Metrics, log: Log): MiddlewareHandler<Env> {
  return async (c, next) => {
    const begun = process.uptime();
    await next();
    const ms = 1000 * (process.uptime() - begun);
    const { status } = c.res;
    metrics.count(c.req.method, status, ms);
    const asked = { method: c.req.method, route: routePath(c, -1), status };
    // Set when the request got as far as that.
    const device: StoredDevice | undefined = c.get('device');
    const who = device === undefined ? {} : { device: device.id };
    log(levelOf(status), 'request', { ...asked, ...who, ms: Math.round(ms) });
  };
}

function levelOf(status: number): LogLevel {
  return status >= 500 || REFUSALS.has(status) ? 'warn' : 'debug';
}
