import { isWithin, limits } from '@platewright/core/records/limits.ts';
import { type BodyMassUnit, formatBodyMass, parseBodyMass } from '@platewright/core/units/mass.ts';
import { type DayOrder, hasSlashes, readDate } from './read-date.ts';

/** What became of one pasted line. */
export type PastedLine =
  | { line: number; text: string; date: string; kg: number; wrong: null }
  | { line: number; text: string; wrong: string };

/**
 * Reads pasted weigh-ins: on each line a date and a body mass, with a comma, a semicolon, a tab or spaces between; more
 * columns are passed over. A first line without digits is a head. A bare number is in `unit`;
 * no date comes after `today`.
 */
export function readWeighIns(
  pasted: string,
  { unit, order, today }: { unit: BodyMassUnit; order: DayOrder | null; today: string },
): PastedLine[] {
  return pasted
    .split(/\r?\n/)
    .map((text, index) => ({ text: text.trim(), line: index + 1 }))
    .filter(({ text, line }) => text !== '' && !(line === 1 && !/\d/.test(text)))
    .map(({ text, line }) => ({ text, line, ...readLine(text, { unit, order, today }) }));
}

type Read = { date: string; kg: number; wrong: null } | { wrong: string };

function readLine(
  text: string,
  { unit, order, today }: { unit: BodyMassUnit; order: DayOrder | null; today: string },
): Read {
  if (order === null && hasSlashes(text))
    return { wrong: 'Choose above whether the day or the month comes first.' };
  const date = readDate(text, order);
  if (!date) return { wrong: 'No date was found at its start: write it as 2025-03-01.' };
  if (date.date > today)
    return { wrong: `${date.date} is still to come: check the year, and which is the day.` };
  const rest = text.slice(date.length).replace(/^["']?[\s,;]+["']?/, '');
  // A time of day may follow the date.
  const withoutTime = rest.replace(/^T?\d{1,2}:\d{2}(:\d{2})?\S*["']?[\s,;]+["']?/, '');
  const mass = /^\d+(?:[.,]\d+)?\s*(?:kgs?|lbs?)?(?=$|[\s,;"'])/i.exec(withoutTime)?.[0];
  const kg = mass === undefined ? undefined : parseBodyMass(mass, unit);
  if (kg === undefined)
    return { wrong: 'No body mass was found after the date: write it as 82.4 or 82.4 kg.' };
  if (!isWithin(kg, limits.weighInKg)) {
    const { least, most } = limits.weighInKg;
    const expected = `${formatBodyMass(least, unit)} to ${formatBodyMass(most, unit)}`;
    return { wrong: `A body mass from ${expected} is expected: check the unit.` };
  }
  return { date: date.date, kg, wrong: null };
}
