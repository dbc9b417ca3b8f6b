/** Calendar dates are `YYYY-MM-DD` text, so they sort as text; arithmetic goes through UTC, where every day has 24 hours. */

const MS_PER_DAY = 86_400_000;

function dayNumber(date: string): number {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / MS_PER_DAY);
}

function fromDayNumber(day: number): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

/** The date `days` after `date`; before it when negative. */
export function addDays(date: string, days: number): string {
  return fromDayNumber(dayNumber(date) + days);
}

/** Days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** `count` dates, one after the other, the last of which is `last`. */
export function datesUpTo(last: string, count: number): string[] {
  const end = dayNumber(last);
  return Array.from({ length: count }, (_, i) => fromDayNumber(end - count + 1 + i));
}

/** Weekday by ISO 8601: 1 = Monday … 7 = Sunday. */
export function isoWeekday(date: string): number {
  // 1970-01-01 was a Thursday, ISO weekday 4.
  return ((((dayNumber(date) + 3) % 7) + 7) % 7) + 1;
}
