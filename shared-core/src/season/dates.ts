import { dayNumber, isoDay } from '../units/day-number.ts';

/** Calendar dates are `YYYY-MM-DD` text, so they sort as text; arithmetic goes through numbers of days. */

/** The date `days` after `date`; before it when negative. */
export function addDays(date: string, days: number): string {
  return isoDay(dayNumber(date) + days);
}

/** Days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** `count` dates, one after the other, the last of which is `last`. */
export function datesUpTo(last: string, count: number): string[] {
  const end = dayNumber(last);
  return Array.from({ length: count }, (_, i) => isoDay(end - count + 1 + i));
}

/** Weekday by ISO 8601: 1 = Monday … 7 = Sunday. */
export function isoWeekday(date: string): number {
  // 1970-01-01 was a Thursday, ISO weekday 4.
  return ((((dayNumber(date) + 3) % 7) + 7) % 7) + 1;
}
