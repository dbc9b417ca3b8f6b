import { editsRequestSchema } from '@platewright/core/protocol/records.ts';
import { Hono } from 'hono';
import type { RecordQuery } from '../../store/store.ts';
import { requireDevice } from '../auth.ts';
import { json, query } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { recordsQuerySchema } from '../queries.ts';
import { athleteToRead } from '../rights.ts';

/** Records for pages that keep no replica. */
export function recordRoutes(deps: Deps) {
  return new Hono<Env>()
    .get('/records', requireDevice(deps), query(recordsQuerySchema), async (c) => {
      const query = c.req.valid('query');
      const athlete = athleteToRead(c.get('device').rights, query.athlete);
      const found = await deps.store.records(given({ ...query, athlete }));
      const records = found
        .filter(({ fields }) => fields.removed !== true)
        .map(({ athlete, id, kind, fields }) => ({ athlete, id, kind, fields }));
      return c.json({ records }, 200);
    })
    .post('/records', requireDevice(deps), json(editsRequestSchema), async (c) => {
      const records = await deps.writer.edit(c.req.valid('json').edits, c.get('device'));
      return c.json({ records, seq: await deps.store.lastSeq() }, 200);
    });
}

/** The query without what was not asked. */
function given(asked: { [K in keyof RecordQuery]: string | undefined }): RecordQuery {
  const query: RecordQuery = {};
  for (const name of ['athlete', 'kind', 'from', 'to'] as const) {
    const value = asked[name];
    if (value !== undefined) query[name] = value;
  }
  return query;
}
