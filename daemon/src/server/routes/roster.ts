import { setImmediate as breathe } from 'node:timers/promises';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { readRecord } from '@platewright/core/changes/read.ts';
import type { Athlete } from '@platewright/core/records/kinds.ts';
import type { RosterRow, RosterView } from '@platewright/core/views/roster.ts';
import { Hono } from 'hono';
import { requireDevice } from '../auth.ts';
import { query } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { rosterQuerySchema } from '../queries.ts';
import { athleteToRead } from '../rights.ts';
import { createRosterRows } from '../roster-rows.ts';
import { athleteTime } from '../season.ts';

/** Athletes of one answer: each costs a weekly call. */
const ROWS = 20;

/** How the athletes stand whom a device may see. */
export function rosterRoutes(deps: Deps) {
  const { athletes, now } = deps;
  const rowOf = createRosterRows(deps);
  return new Hono<Env>().get('/views/roster', requireDevice(deps), query(rosterQuerySchema), async (c) => {
    const { after = '' } = c.req.valid('query');
    const records = await athletes.of(athleteToRead(c.get('device').rights, undefined));
    const next = firstAfter(records, after, ROWS + 1);
    const rows: RosterRow[] = [];
    for (const athlete of next.slice(0, ROWS)) {
      rows.push(await rowOf(athlete, athleteTime(athlete, now()).date));
      // Other requests get their turn.
      await breathe();
    }
    const view: RosterView = { rows, more: next.length > ROWS };
    return c.json(view, 200);
  });
}

/** So many athletes whose ids come after one; their records are by id. */
function firstAfter(records: readonly StoredRecord[], after: string, count: number): Athlete[] {
  const found: Athlete[] = [];
  for (const record of records) {
    const athlete = record.id > after ? readRecord('athlete', record) : null;
    if (athlete !== null && found.push(athlete) === count) break;
  }
  return found;
}
