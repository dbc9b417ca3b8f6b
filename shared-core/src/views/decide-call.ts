import type { FieldsOf } from '../records/kinds.ts';
import type { SeasonRecords } from './season-records.ts';
import { weekView } from './week.ts';

/** What the athlete makes of a call. `markG` goes with `changed`: the mark, g a day, taken instead of the proposed one. */
export interface Decision {
  decision: 'accepted' | 'changed' | 'declined';
  markG?: number | undefined;
}

/**
 * The weekly-call record of a decision on the call of `date`, made at `at` (ms since 1970), or why there
 * is no call to decide on. Body mass in force follows the bodyweight line of that date, so it never follows one weigh-in.
 */
export function decideCall(
  records: SeasonRecords,
  date: string,
  { decision, markG }: Decision,
  at: number,
): Omit<FieldsOf<'weekly-call'>, 'removed'> | { noCall: string } {
  const { call, planAfter, noCall } = weekView(records, date);
  if (call === null || planAfter === null) return { noCall: noCall ?? 'There is no call for this date.' };
  const taken = {
    accepted: call.carbohydrateG,
    changed: markG ?? call.carbohydrateG,
    declined: call.markInForceG,
  };
  return {
    date,
    verdict: call.verdict,
    decision,
    proposedG: call.carbohydrateG,
    markG: taken[decision],
    bodyMassKg: planAfter.bodyMassKg,
    summary: call.summary.join(' '),
    at,
  };
}
