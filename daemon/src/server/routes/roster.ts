import { Hono } from 'hono';
import { requireDevice } from '../auth.ts';
import { query } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { rosterQuerySchema } from '../queries.ts';
import { athleteToRead } from '../rights.ts';

/** How the athletes stand whom a device may see. */
export function rosterRoutes(deps: Deps) {
  return new Hono<Env>().get('/views/roster', requireDevice(deps), query(rosterQuerySchema), async (c) => {
    const { after = '' } = c.req.valid('query');
    const athlete = athleteToRead(c.get('device').rights, undefined);
    return c.json(await deps.roster.part(athlete, after), 200);
  });
}
