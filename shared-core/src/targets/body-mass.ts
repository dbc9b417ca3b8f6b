import type { WeeklyCallRecord } from '../records/kinds.ts';
import { newestCall } from './newest-call.ts';

/**
 * Body mass in force on a date, kg: the bodyweight line of the newest decided weekly call, else the mass of the set-up.
 * Never a weigh-in, because one reading is off by half a kilogram (Cheuvront et al. 2004: 0.51 kg from day to day).
 */
export function bodyMassInForce(
  startMassKg: number,
  calls: readonly WeeklyCallRecord[],
  date: string,
): number {
  return newestCall(calls, date)?.bodyMassKg ?? startMassKg;
}
