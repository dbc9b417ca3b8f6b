import type { WeeklyCallRecord } from '../records/kinds.ts';
import { addDays } from '../season/dates.ts';
import { newestCall } from '../targets/newest-call.ts';

const WEEK = 7;

/** Date from which the next call is to be decided: seven days after the last decision up to `date`; `date` when there is none. */
export function callDueOn(calls: readonly WeeklyCallRecord[], date: string): string {
  const last = newestCall(calls, date);
  return last === null ? date : addDays(last.date, WEEK);
}
