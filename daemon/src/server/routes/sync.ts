import { MAX_PULL, pushRequestSchema } from '@platewright/core/protocol/sync.ts';
import { PROTOCOL } from '@platewright/core/protocol/version.ts';
import { Hono } from 'hono';
import { requireDevice } from '../auth.ts';
import { json, query } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { pushWithRights } from '../push.ts';
import { pullQuerySchema } from '../queries.ts';
import { maySee } from '../rights.ts';
import { versionGuard } from '../version-guard.ts';

/** Changes into the store and out of it; both are safe to repeat. */
export function syncRoutes(deps: Deps) {
  const { store, writer, now } = deps;
  const head = () => ({ store: store.id, protocol: PROTOCOL, now: now() });

  return new Hono<Env>()
    .post('/push', versionGuard, requireDevice(deps), json(pushRequestSchema), async (c) => {
      const outcomes = await pushWithRights(writer, c.get('device').rights, c.req.valid('json').changes);
      return c.json({ ...head(), outcomes }, 200);
    })
    .get('/pull', versionGuard, requireDevice(deps), query(pullQuerySchema), async (c) => {
      const { since, limit } = c.req.valid('query');
      const page = await store.changesSince(since ?? 0, limit ?? MAX_PULL);
      const { rights } = c.get('device');
      const changes = page.changes.filter(({ athlete }) => maySee(rights, athlete));
      return c.json({ ...head(), ...page, changes }, 200);
    });
}
