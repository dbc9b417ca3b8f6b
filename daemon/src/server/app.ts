import { Hono } from 'hono';
import { methodNotAllowed } from 'hono/method-not-allowed';
import { getPath } from 'hono/utils/url';
import * as z from 'zod/mini';
import type { Deps, Env } from './deps.ts';
import { guard } from './guard.ts';
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
import { watchRequests } from './watch.ts';

// Reasons of refusals are read by people.
z.config(z.locales.en());

export type App = ReturnType<typeof createApp>;

/** The daemon's HTTP interface, without a socket. */
export function createApp(deps: Deps) {
  const { front, log = silent } = deps;
  const metrics = createMetrics();
  const app = new Hono<Env>({ getPath: (request) => withoutBase(getPath(request), front.basePath) });
  app.use(watchRequests(metrics, log), guard(deps));
  app.use(
    methodNotAllowed({
      app,
      onMethodNotAllowed: (c, methods) => problemResponse(c, notAllowed(methods)),
    }),
  );
  app.onError((error, c) => {
    const problem = toProblem(error);
    if (problem.status >= 500) log('error', 'fault', faultFacts(error));
    return problemResponse(c, problem);
  });
  app.notFound((c) => {
    const isPage = /^(GET|HEAD)$/.test(c.req.method) && !c.req.path.startsWith('/v1/');
    const page = isPage && deps.pages !== null ? servePage(c, deps.pages) : null;
    return page ?? problemResponse(c, notFound(isPage && deps.pages === null));
  });
  // The pages' addresses are relative to a folder, which has a slash at its end.
  if (front.basePath !== '') app.get(front.basePath, (c) => c.redirect(`${front.basePath}/`, 308));
  return app
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
