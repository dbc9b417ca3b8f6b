import { localTime, minutesOn } from '@platewright/core/season/local-date.ts';
import { bodyView } from '@platewright/core/views/body.ts';
import { nextContest } from '@platewright/core/views/contest.ts';
import { dayView } from '@platewright/core/views/day.ts';
import { habitsView } from '@platewright/core/views/habits.ts';
import { larderView } from '@platewright/core/views/larder.ts';
import { liftsView } from '@platewright/core/views/lifts.ts';
import { planView } from '@platewright/core/views/plan.ts';
import { weekView } from '@platewright/core/views/week.ts';
import { Hono } from 'hono';
import type * as z from 'zod/mini';
import type { StoredDevice } from '../../store/store.ts';
import { requireDevice } from '../auth.ts';
import { query } from '../body.ts';
import type { Deps, Env } from '../deps.ts';
import { viewQuerySchema } from '../queries.ts';
import { athleteToRead } from '../rights.ts';
import { athleteOf, callSeason, daySeason, habitsSeason, larderSeason, liftsSeason } from '../season.ts';

/** What the pages show: computed from records, nothing of it stored. */
export function viewRoutes(deps: Deps) {
  const { store, athletes, seasons, now } = deps;
  const asked = query(viewQuerySchema);

  /** Whose view, of which date, and what that athlete's clock shows. */
  async function dated({ rights }: StoredDevice, asked: z.infer<typeof viewQuerySchema>) {
    const athlete = await athleteOf(athletes, athleteToRead(rights, asked.athlete));
    const clock = localTime(now(), athlete);
    return { who: athlete.id, clock, date: asked.date ?? clock.date };
  }

  return new Hono<Env>()
    .use('/views/*', requireDevice(deps))
    .get('/views/day', asked, async (c) => {
      const { who, clock, date } = await dated(c.get('device'), c.req.valid('query'));
      return c.json(dayView(await daySeason(store, who, date), date, minutesOn(date, clock)), 200);
    })
    .get('/views/plan', asked, async (c) => {
      const { who, date } = await dated(c.get('device'), c.req.valid('query'));
      const season = await daySeason(store, who, date);
      // What to expect on a contest follows from all that was weighed and eaten.
      const whole = nextContest(season.phases, date) === null ? season : await callSeason(seasons, who);
      return c.json(planView(whole, date), 200);
    })
    .get('/views/week', asked, async (c) => {
      const { who, date } = await dated(c.get('device'), c.req.valid('query'));
      return c.json(weekView(await callSeason(seasons, who), date), 200);
    })
    .get('/views/body', asked, async (c) => {
      const { who, date } = await dated(c.get('device'), c.req.valid('query'));
      return c.json(bodyView(await callSeason(seasons, who), date), 200);
    })
    .get('/views/lifts', asked, async (c) => {
      const { who, date } = await dated(c.get('device'), c.req.valid('query'));
      return c.json(liftsView(await liftsSeason(store, who, date), date), 200);
    })
    .get('/views/habits', asked, async (c) => {
      const { who, date } = await dated(c.get('device'), c.req.valid('query'));
      return c.json(habitsView(await habitsSeason(store, who, date), date), 200);
    })
    .get('/views/larder', asked, async (c) => {
      const { who } = await dated(c.get('device'), c.req.valid('query'));
      return c.json(larderView(await larderSeason(store, who)), 200);
    });
}
