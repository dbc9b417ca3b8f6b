import { tapeFat } from '../body/tape-fat.ts';
import type { TapeSite } from '../records/entry.ts';
import type { Athlete, Tape } from '../records/kinds.ts';
import { daysBetween } from '../season/dates.ts';
import type { FatEstimate } from './body-types.ts';

/** A tape older than this does not speak of the body of today, days. */
const FRESH_DAYS = 56;
/** Error of a value whose method is not known, % of body mass: that of good field methods (common practice, no source). */
const UNKNOWN_METHOD_ERROR = 3.5;

/**
 * Body fat on a date: from the newest tape of waist and neck (and hip) of the last eight weeks, else as given at set-up.
 * `tape` holds readings up to the date, oldest first. Null when there is neither.
 */
export function fatOn(athlete: Athlete, tape: readonly Tape[], date: string): FatEstimate | null {
  const newest = (site: TapeSite) =>
    tape.findLast((reading) => reading.site === site && daysBetween(reading.date, date) <= FRESH_DAYS);
  const waist = newest('waist');
  const neck = newest('neck');
  const hip = newest('hip');
  const { sex, heightCm } = athlete;
  if (waist !== undefined && neck !== undefined) {
    const around = { heightCm, neckCm: neck.cm, waistCm: waist.cm };
    if (sex === 'male') return dated(tapeFat({ sex, ...around }), waist.date);
    if (hip !== undefined) return dated(tapeFat({ sex, ...around, hipCm: hip.cm }), waist.date);
  }
  return given(athlete);
}

function dated(found: ReturnType<typeof tapeFat>, date: string): FatEstimate | null {
  return found === null ? null : { ...found, date };
}

function given({ fatPercent }: Athlete): FatEstimate | null {
  return fatPercent === undefined
    ? null
    : { percent: fatPercent, errorPercent: UNKNOWN_METHOD_ERROR, method: 'as given at set-up', date: null };
}
