import {
  isPushRequest,
  MAX_PULL,
  MAX_SNAPSHOT,
  type Place,
  pushRequestSchema,
} from '@platewright/core/protocol/sync.ts';
import { PROTOCOL } from '@platewright/core/protocol/version.ts';
import { type Context, Hono } from 'hono';
import { requireDevice } from '../auth.ts';
import { json, query } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { placeOf, pullPage, snapshotPage } from '../log-pages.ts';
import { pushWithRights } from '../push.ts';
import { pullQuerySchema, snapshotQuerySchema } from '../queries.ts';
import { versionGuard } from '../version-guard.ts';

/** Changes into the store and out of it, and all records for who begins; all are safe to repeat. */
export function syncRoutes(deps: Deps) {
  const { store, writer, now } = deps;
  const head = (c: Context<Env>) => {
    const { rights } = c.get('device');
    return { store: store.id, protocol: PROTOCOL, now: now(), rights };
  };

  return new Hono<Env>()
    .post('/push', versionGuard, requireDevice(deps), json(pushRequestSchema, isPushRequest), async (c) => {
      const outcomes = await pushWithRights(writer, c.get('device').rights, c.req.valid('json').changes);
      return c.json({ ...head(c), outcomes, reached: await placeOf(store, outcomes) }, 200);
    })
    .get('/pull', versionGuard, requireDevice(deps), query(pullQuerySchema), async (c) => {
      const { since = 0, mark, limit = MAX_PULL, ...known } = c.req.valid('query');
      const reached = reachedOf(known);
      const page = await pullPage(store, c.get('device').rights, { since, mark, reached, limit });
      return c.json({ ...head(c), ...page }, 200);
    })
    .get('/snapshot', versionGuard, requireDevice(deps), query(snapshotQuerySchema), async (c) => {
      const { afterAthlete: athlete, afterRecord: id, limit = MAX_SNAPSHOT, ...known } = c.req.valid('query');
      const after = athlete === undefined || id === undefined ? null : { athlete, id };
      const page = await snapshotPage(store, c.get('device').rights, {
        after,
        reached: reachedOf(known),
        limit,
      });
      return c.json({ ...head(c), ...page }, 200);
    });
}

function reachedOf({
  reached,
  reachedMark,
}: {
  reached?: number | undefined;
  reachedMark?: string | undefined;
}): Place | null {
  return reached === undefined || reachedMark === undefined ? null : { seq: reached, mark: reachedMark };
}
