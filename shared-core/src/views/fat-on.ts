import { calipersFat } from '../body/calipers.ts';
import { type Circumferences, tapeFat } from '../body/tape-fat.ts';
import type { TapeSite } from '../records/body.ts';
import type { Athlete, Calipers, Tape } from '../records/kinds.ts';
import { daysBetween } from '../season/dates.ts';
import { personOn } from '../targets/person.ts';
import type { FatEstimate } from './body-types.ts';

/** A reading older than this does not speak of the body of today, days (common practice, no source). */
const FRESH_DAYS = 56;
/** Error of a value whose method is not known, % of body mass: that of good field methods (common practice, no source). */
const UNKNOWN_METHOD_ERROR = 3.5;

/** Readings, oldest first. */
interface Readings {
  tape: readonly Tape[];
  calipers: readonly Calipers[];
}

/**
 * Body fat on a date: from the newest calipers or tape of the last eight weeks, of the same date from what has the
 * smaller error, else as given at set-up. Null when there is none.
 */
export function fatOn(athlete: Athlete, readings: Readings, date: string): FatEstimate | null {
  return newestOn(athlete, readings, date) ?? given(athlete);
}

/** The same in % of body mass, without what was given at set-up, which may be of another body by now. */
export function measuredFat(athlete: Athlete, readings: Readings, date: string): number | null {
  return newestOn(athlete, readings, date)?.percent ?? null;
}

function newestOn(athlete: Athlete, { tape, calipers }: Readings, date: string): FatEstimate | undefined {
  const fresh = (reading: { date: string }) =>
    reading.date <= date && daysBetween(reading.date, date) <= FRESH_DAYS;
  const found = [
    byTape(athlete, tape.filter(fresh)),
    calipers
      .filter(fresh)
      .map((reading) => byCalipers(athlete, reading))
      .findLast((estimate) => estimate !== null),
  ].filter((estimate) => estimate !== null && estimate !== undefined);
  return found.sort(newestThenSurest)[0];
}

/** Body fat as one set of skinfolds tells it; null when folds are missing. */
export function byCalipers(athlete: Athlete, { date, method, folds }: Calipers): FatEstimate | null {
  return dated(calipersFat(personOn(athlete, date), method, folds), date);
}

/** The newest of waist and neck (and hip), dated by the waist, which moves the most. */
function byTape({ sex, heightCm }: Athlete, tape: readonly Tape[]): FatEstimate | null {
  const newest = (site: TapeSite) => tape.findLast((reading) => reading.site === site);
  const [waist, neck, hip] = [newest('waist'), newest('neck'), newest('hip')];
  if (waist === undefined || neck === undefined) return null;
  const around = { heightCm, neckCm: neck.cm, waistCm: waist.cm };
  const fat = (circumferences: Circumferences) => dated(tapeFat(circumferences), waist.date);
  if (sex === 'male') return fat({ sex, ...around });
  return hip === undefined ? null : fat({ sex, ...around, hipCm: hip.cm });
}

function newestThenSurest(a: FatEstimate, b: FatEstimate): number {
  if (a.date !== b.date) return (a.date ?? '') > (b.date ?? '') ? -1 : 1;
  return a.errorPercent - b.errorPercent;
}

function dated(found: ReturnType<typeof tapeFat>, date: string): FatEstimate | null {
  return found === null ? null : { ...found, date };
}

function given({ fatPercent }: Athlete): FatEstimate | null {
  return fatPercent === undefined
    ? null
    : { percent: fatPercent, errorPercent: UNKNOWN_METHOD_ERROR, method: 'as given at set-up', date: null };
}
