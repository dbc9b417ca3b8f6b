import type { Bindings } from './deps.ts';
import type { Answering } from './guard.ts';
import type { Headed } from './headers.ts';
import type { Log, LogLevel } from './log.ts';
import type { Metrics } from './metrics.ts';

/** Refusals that someone who looks after the daemon may want to know of. */
const REFUSALS = new Set([401, 403, 421, 429]);

interface Watching {
  metrics: Metrics;
  log: Log;
  /** The pattern of the route that a request asks for. */
  patternOf(request: Request): string;
}

/** Counts each answer, and logs it by its route's pattern, because an address itself may name records. */
export function watch(
  { metrics, log, patternOf }: Watching,
  answering: Answering<Headed & Pick<Bindings, 'seen'>>,
): Answering<Headed> {
  return (request, bindings) => {
    const begun = process.uptime();
    const seen: Bindings['seen'] = { device: null };
    const counted = (answer: Response): Response => {
      const ms = 1000 * (process.uptime() - begun);
      const { method } = request;
      const { status } = answer;
      metrics.count(method, status, ms);
      log(levelOf(status), 'request', () => ({
        ...{ method, route: patternOf(request), status },
        ...(seen.device === null ? {} : { device: seen.device }),
        ms: Math.round(ms),
      }));
      return answer;
    };
    const answer = answering(request, { ...bindings, seen });
    return answer instanceof Promise ? answer.then(counted) : counted(answer);
  };
}

function levelOf(status: number): LogLevel {
  return status >= 500 || REFUSALS.has(status) ? 'warn' : 'debug';
}
