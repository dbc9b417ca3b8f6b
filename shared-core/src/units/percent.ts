import { formatDecimal, formatSigned } from './decimal.ts';
import { roundTo } from './round.ts';

/** A share or a chance for reading: `18 %`. */
export function formatShare(share: number): string {
  return `${formatDecimal(100 * share)} %`;
}

/** A pace that was chosen, with its sign: `+0.25 %` of body mass a week. */
export function formatPace(percentPerWeek: number): string {
  return `${formatSigned(percentPerWeek, 2)} %`;
}

/** The last digit of a pace that is known, % of body mass a week. */
export const paceStep = 0.05;

/** A pace that was estimated: to the last digit that is known. */
export function formatEstimatedPace(percentPerWeek: number): string {
  return formatPace(roundTo(percentPerWeek, paceStep));
}

/** Weeks in an average month of the calendar. */
export const weeksPerMonth = 365.2425 / 7 / 12;
