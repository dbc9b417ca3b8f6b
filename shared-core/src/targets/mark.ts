import type { FieldsOf, WeeklyCallRecord } from '../records/kinds.ts';
import { startMark } from './carbohydrate.ts';
import { newestCall } from './newest-call.ts';

/** The carbohydrate mark in force, g a day, and what set it. */
export interface MarkInForce {
  markG: number;
  setBy: 'rule' | 'phase' | 'call';
}

/**
 * The mark in force on a date. A starting mark that the athlete typed for a phase holds until the first decision inside
 * that phase; otherwise the newest decision counts, and before any decision the rule.
 */
export function markInForce(
  calls: readonly WeeklyCallRecord[],
  phase: Pick<FieldsOf<'phase'>, 'from' | 'startMarkG'> | null,
  quotaG: number,
  date: string,
): MarkInForce {
  const call = newestCall(calls, date);
  if (phase?.startMarkG !== undefined && (call === null || call.date < phase.from)) {
    return { markG: phase.startMarkG, setBy: 'phase' };
  }
  return call === null ? { markG: startMark(quotaG), setBy: 'rule' } : { markG: call.markG, setBy: 'call' };
}
