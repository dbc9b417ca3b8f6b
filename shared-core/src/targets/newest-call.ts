import type { WeeklyCallRecord } from '../records/kinds.ts';
import { latestOn } from '../season/latest.ts';

/** The newest decision on or before a date; null when there is none. */
export function newestCall(calls: readonly WeeklyCallRecord[], date: string): WeeklyCallRecord | null {
  return latestOn(calls, (call) => call.date, date);
}
