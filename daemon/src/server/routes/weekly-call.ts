import type { WeeklyCall } from '@platewright/core/call/output.ts';
import { decisionRequestSchema } from '@platewright/core/protocol/records.ts';
import type { FieldsOf } from '@platewright/core/records/kinds.ts';
import { bodyView } from '@platewright/core/views/body.ts';
import { weekView } from '@platewright/core/views/week.ts';
import { Hono } from 'hono';
import type * as z from 'zod/mini';
import { requireDevice } from '../auth.ts';
import { invalid, json } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { ProblemError } from '../problem.ts';
import { athleteTime, wholeSeason } from '../season.ts';

type Decision = z.infer<typeof decisionRequestSchema>;

/** Records what the athlete decides on the weekly call of a date; the call itself is computed here, never sent. */
export function weeklyCallRoutes(deps: Deps) {
  const { store, seasons, writer, now } = deps;
  return new Hono<Env>().post('/weekly-call', requireDevice(deps), json(decisionRequestSchema), async (c) => {
    const decision = c.req.valid('json');
    const { athlete, date } = decision;
    const season = await wholeSeason(seasons, athlete);
    if (date > athleteTime(season.athlete, now()).date)
      throw invalid([{ pointer: '/date', detail: 'this day has not come yet' }]);
    const { call, noCall } = weekView(season, date);
    if (call === null)
      throw new ProblemError(409, 'no-call', { detail: noCall ?? 'There is no call for this date.' });
    const body = bodyView(season, date);
    const fields: Omit<FieldsOf<'weekly-call'>, 'removed'> & { removed: false } = {
      date,
      verdict: call.verdict,
      decision: decision.decision,
      proposedG: call.carbohydrateG,
      markG: decidedMark(decision, call),
      bodyMassKg: body.points.at(-1)?.lineKg.mean ?? body.bodyMassInForceKg,
      summary: call.summary.join(' '),
      at: now(),
      // An earlier decision on this call may have been taken back.
      removed: false,
    };
    const edit = { kind: 'weekly-call', athlete, id: `call-${date}`, fields: { ...fields } };
    const records = await writer.edit([edit], c.get('device').id);
    return c.json({ records, seq: await store.lastSeq() }, 200);
  });
}

/** The carbohydrate mark in force after the decision, g a day. */
function decidedMark({ decision, markG }: Decision, call: WeeklyCall): number {
  if (decision === 'accepted') return call.carbohydrateG;
  if (decision === 'declined') return call.markInForceG;
  if (markG === undefined)
    throw invalid([{ pointer: '/markG', detail: 'say the mark to change to, in grams a day' }]);
  return markG;
}
