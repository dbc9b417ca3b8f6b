import type { CallInput } from '../call/input.ts';
import type { WeeklyCall } from '../call/output.ts';
import { weeklyCall } from '../call/weekly-call.ts';
import type { Units } from '../units/reader.ts';

/** The call, or in words why there is none: a number that no scale or tape can have shown is said, not thrown at the page. */
export function tryCall(
  input: CallInput,
  units: Units,
): { call: WeeklyCall; noCall: null } | { call: null; noCall: string } {
  try {
    return { call: weeklyCall(input, units), noCall: null };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { call: null, noCall: `There is no call, because a number can’t be right: ${error.message}` };
  }
}
