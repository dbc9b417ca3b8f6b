import type { Aim } from '../call/input.ts';
import type { LinePoint } from '../call/output.ts';
import { addDays, daysBetween } from '../season/dates.ts';
import type { PaceWedge } from './body-types.ts';

const DAYS_AHEAD = 28;

/**
 * The aim as a wedge from the line at the last decision or the start of the phase, whichever is later, to four weeks
 * after the last point. Null without a line or when the phase has no start.
 */
export function paceWedge(
  line: readonly LinePoint[],
  aim: Aim,
  lastDecision: string | null,
): PaceWedge | null {
  const end = line.at(-1);
  if (end === undefined || aim.since === undefined) return null;
  const turn = lastDecision !== null && lastDecision > aim.since ? lastDecision : aim.since;
  const start = line.find((point) => point.day >= turn) ?? end;
  const to = addDays(end.day, DAYS_AHEAD);
  const weeks = daysBetween(start.day, to) / 7;
  const fromKg = start.massKg.mean;
  const after = (percentPerWeek: number) => fromKg * (1 + (percentPerWeek / 100) * weeks);
  return {
    from: start.day,
    fromKg,
    to,
    lowKg: after(aim.band.low),
    highKg: after(aim.band.high),
  };
}
