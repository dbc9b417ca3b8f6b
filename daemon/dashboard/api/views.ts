import type { decisionRequestSchema } from '@platewright/core/protocol/records.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import type { HabitsView } from '@platewright/core/views/habits.ts';
import type { LarderView } from '@platewright/core/views/larder-types.ts';
import type { LiftsView } from '@platewright/core/views/lifts-types.ts';
import type { PlanView } from '@platewright/core/views/plan-types.ts';
import type { RosterView } from '@platewright/core/views/roster.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import type { WeekView } from '@platewright/core/views/week-types.ts';
import * as z from 'zod/mini';
import { getView, post } from './request.ts';

interface Views {
  day: DayView;
  week: WeekView;
  body: BodyView;
  lifts: LiftsView;
  plan: PlanView;
  larder: LarderView;
  habits: HabitsView;
}

/** A view of an athlete on a date; without a date, on the athlete's today. */
export function readView<N extends keyof Views>(name: N, athlete: string, date = ''): Promise<Views[N]> {
  const query = new URLSearchParams({ athlete, ...(date && { date }) });
  return getView(`views/${name}?${query}`);
}

/** How the athletes stand, those whose ids come after `after`. */
export function readRoster(after = ''): Promise<RosterView> {
  return getView(`views/roster${after && `?${new URLSearchParams({ after })}`}`);
}

type Decision = z.infer<typeof decisionRequestSchema>;

/** Records what the athlete decides on a weekly call. */
export async function decide(decision: Decision): Promise<void> {
  await post('weekly-call', decision, z.unknown());
}
