import type { WeeklyCallRecord } from '../records/kinds.ts';

/** The newest decision on or before a date; null when there is none. */
export function newestCall(calls: readonly WeeklyCallRecord[], date: string): WeeklyCallRecord | null {
  return calls.reduce<WeeklyCallRecord | null>((newest, call) => {
    if (call.date > date) return newest;
    if (newest === null || call.date > newest.date) return call;
    return call.date === newest.date && call.id > newest.id ? call : newest;
  }, null);
}
