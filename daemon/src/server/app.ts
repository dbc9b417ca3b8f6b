import { Hono } from 'hono';
import { METHODS } from 'hono/router';
import { getPath } from 'hono/utils/url';
import * as z from 'zod/mini';
import type { Deps, Env } from './deps.ts';
import { guard } from './guard.ts';
import { owned } from './headers.ts';
import { limitBody } from './limit-body.ts';
import { faultFacts, silent } from './log.ts';
import { createMetrics } from './metrics.ts';
import { servePage } from './pages.ts';
import { ProblemError, problemResponse, toProblem } from './problem.ts';
import { deviceRoutes } from './routes/devices.ts';
import { eventRoutes } from './routes/events.ts';
import { pairingRoutes } from './routes/pairing.ts';
import { photoRoutes } from './routes/photos.ts';
import { recordRoutes } from './routes/records.ts';
import { rosterRoutes } from './routes/roster.ts';
import { syncRoutes } from './routes/sync.ts';
import { systemRoutes } from './routes/system.ts';
import { viewRoutes } from './routes/views.ts';
import { weeklyCallRoutes } from './routes/weekly-call.ts';
import { withoutBase } from './site.ts';
import { watch } from './watch.ts';

// Reasons of refusals are read by people.
z.config(z.locales.en());

export type App = ReturnType<typeof createApp>;

/** The daemon's HTTP interface, without a socket. */
export function createApp(deps: Deps) {
  const { front, log = silent } = deps;
  const metrics = createMetrics();
  const pathOf = (request: Request) => withoutBase(getPath(request), front.basePath);
  const app = new Hono<Env>({ getPath: pathOf });
  // Not before reads, because a route with a single step is answered at once.
  app.on(['POST', 'PUT', 'DELETE'], '*', limitBody);
  app.onError((error) => {
    const problem = toProblem(error);
    if (problem.status >= 500) log('error', 'fault', faultFacts(error));
    return problemResponse(problem);
  });
  app.notFound((c) => {
    const methods = methodsAt(app, c.req.path);
    if (methods.length > 0) return problemResponse(notAllowed(methods));
    const isPage = /^(GET|HEAD)$/.test(c.req.method) && !c.req.path.startsWith('/v1/');
    const page = isPage && deps.pages !== null ? servePage(c.req.path, deps.pages) : null;
    return page ?? problemResponse(notFound(isPage && deps.pages === null));
  });
  // The pages' addresses are relative to a folder, which has a slash at its end.
  if (front.basePath !== '') app.get(front.basePath, (c) => c.redirect(`${front.basePath}/`, 308));
  const served = app
    .route('/v1', systemRoutes(deps, metrics))
    .route('/v1', pairingRoutes(deps))
    .route('/v1', syncRoutes(deps))
    .route('/v1', recordRoutes(deps))
    .route('/v1', photoRoutes(deps))
    .route('/v1', viewRoutes(deps))
    .route('/v1', rosterRoutes(deps))
    .route('/v1', weeklyCallRoutes(deps))
    .route('/v1', deviceRoutes(deps))
    .route('/v1', eventRoutes(deps));
  const answering = watch({ metrics, log, patternOf }, guard(deps, served.fetch));
  served.fetch = (request, bindings = {}) => owned(bindings, answering(request, bindings));
  return served;

  function patternOf(request: Request): string {
    const method = request.method === 'HEAD' ? 'GET' : request.method;
    return patternAt(app, method, pathOf(request)) ?? '*';
  }
}

/** The pattern of the route that a method and a path lead to; null when there is none. */
function patternAt({ router }: Hono<Env>, method: string, path: string): string | null {
  const steps = router.match(method, path)[0].map(([[, route]]) => route);
  return steps.findLast((step) => step.method === method && step.handler !== limitBody)?.path ?? null;
}

/** The methods that a path takes. */
function methodsAt(app: Hono<Env>, path: string): string[] {
  return METHODS.map((method) => method.toUpperCase())
    .filter((method) => patternAt(app, method, path) !== null)
    .flatMap((method) => (method === 'GET' ? ['GET', 'HEAD'] : [method]));
}

function notAllowed(methods: readonly string[]): ProblemError {
  const allow = methods.join(', ');
  return new ProblemError(405, 'method', { detail: `This address takes ${allow}.`, headers: { allow } });
}

function notFound(unbuilt: boolean): ProblemError {
  return new ProblemError(404, 'not-found', {
    detail: unbuilt
      ? 'The dashboard is not built. Start the daemon with npm start, which builds it.'
      : 'There is nothing at this address. The addresses are listed at /v1/openapi.json.',
  });
}
