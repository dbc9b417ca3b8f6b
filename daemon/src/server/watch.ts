import type { MiddlewareHandler } from 'hono';
import { routePath } from 'hono/route';
import type { Env } from './deps.ts';
import type { Log, LogLevel } from './log.ts';
import type { Metrics } from './metrics.ts';

/** Refusals that someone who looks after the daemon may want to know of. */
const REFUSALS = new Set([401, 403, 421, 429]);

/** Counts each answer, and logs it by its route's pattern, because an address itself may name records. */
export function watchRequests(metrics: Metrics, log: Log): MiddlewareHandler<Env> {
  return async (c, next) => {
    const begun = performance.now();
    await next();
    const ms = performance.now() - begun;
    const { status } = c.res;
    metrics.count(c.req.method, status, ms);
    const { method } = c.req;
    log(levelOf(status), 'request', { method, route: routePath(c, -1), status, ms: Math.round(ms) });
  };
}

function levelOf(status: number): LogLevel {
  return status >= 500 || REFUSALS.has(status) ? 'warn' : 'debug';
}
