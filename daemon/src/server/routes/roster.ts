import { setImmediate as breathe } from 'node:timers/promises';
import { readRecord } from '@platewright/core/changes/read.ts';
import { type RosterRow, type RosterView, rosterRow } from '@platewright/core/views/roster.ts';
import { Hono } from 'hono';
import { requireDevice } from '../auth.ts';
import { query } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { rosterQuerySchema } from '../queries.ts';
import { athleteToRead } from '../rights.ts';
import { athleteTime, callSeason } from '../season.ts';

/** Athletes of one answer: each costs a weekly call. */
const ROWS = 20;

/** How the athletes stand whom a device may see. */
export function rosterRoutes(deps: Deps) {
  const { store, seasons, now } = deps;
  return new Hono<Env>().get('/views/roster', requireDevice(deps), query(rosterQuerySchema), async (c) => {
    const { after = '' } = c.req.valid('query');
    const only = athleteToRead(c.get('device').rights, undefined);
    const found = await store.records({ kind: 'athlete', ...(only === undefined ? {} : { athlete: only }) });
    const athletes = found
      .map((record) => readRecord('athlete', record))
      .filter((athlete) => athlete !== null)
      .filter(({ id }) => id > after);
    const rows: RosterRow[] = [];
    for (const athlete of athletes.slice(0, ROWS)) {
      rows.push(rosterRow(await callSeason(seasons, athlete.id), athleteTime(athlete, now()).date));
      // Other requests get their turn.
      await breathe();
    }
    const view: RosterView = { rows, more: athletes.length > ROWS };
    return c.json(view, 200);
  });
}
