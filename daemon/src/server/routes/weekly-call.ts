import { decisionRequestSchema } from '@platewright/core/protocol/records.ts';
import { localDate } from '@platewright/core/season/local-date.ts';
import { decideCall } from '@platewright/core/views/decide-call.ts';
import { Hono } from 'hono';
import { requireDevice } from '../auth.ts';
import { invalid, json } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { ProblemError } from '../problem.ts';
import { demandWrite } from '../rights.ts';
import { callSeason } from '../season.ts';

/** Records what the athlete decides on the weekly call of a date; the call itself is computed here, never sent. */
export function weeklyCallRoutes(deps: Deps) {
  const { store, seasons, writer, now } = deps;
  return new Hono<Env>().post('/weekly-call', requireDevice(deps), json(decisionRequestSchema), async (c) => {
    const decision = c.req.valid('json');
    const { athlete, date } = decision;
    demandWrite(c.get('device').rights, athlete);
    const season = await callSeason(seasons, athlete);
    if (date > localDate(now(), season.athlete))
      throw invalid([{ pointer: '/date', detail: 'this day has not come yet' }]);
    if (decision.decision === 'changed' && decision.markG === undefined)
      throw invalid([{ pointer: '/markG', detail: 'say the mark to change to, in grams a day' }]);
    const decided = decideCall(season, date, decision, now());
    if ('noCall' in decided) throw new ProblemError(409, 'no-call', { detail: decided.noCall });
    // An earlier decision on this call may have been taken back.
    const fields = { ...decided, removed: false };
    const edit = { kind: 'weekly-call', athlete, id: `call-${date}`, fields };
    const records = await writer.edit([edit], c.get('device'));
    return c.json({ records, seq: await store.lastSeq() }, 200);
  });
}
