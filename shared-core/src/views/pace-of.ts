import type { CallInput } from '../call/input.ts';
import type { Pace } from '../call/output.ts';
import { keptUnits } from '../units/reader.ts';
import { tryCall } from './try-call.ts';

/** The call's pace, as soon as the call itself says that it has enough to go by. */
export function paceOf(input: CallInput): Pace | null {
  const { call } = tryCall(input, keptUnits);
  return call === null || call.verdict === 'not-enough' ? null : call.pace;
}
