import { addDays } from './dates.ts';

/** Where and when an athlete's day changes. */
export interface DayBoundary {
  /** IANA name. */
  timeZone: string;
  /** Hour of the athlete's clock, 0 to 11, before which it is still the day before. */
  rolloverHour: number;
}

/** The athlete's own date and the minutes of the local clock since that date's midnight: 24 h and more after midnight. */
export interface LocalTime {
  date: string;
  minutes: number;
}

/**
 * The athlete's date and time of day at an instant in ms since 1970. Throws RangeError for a time zone that the
 * platform does not know.
 */
export function localTime(instantMs: number, boundary: DayBoundary): LocalTime {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone: boundary.timeZone,
    calendar: 'iso8601',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  }).formatToParts(instantMs);
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((p) => p.type === type)?.value ?? '';
  const date = `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`;
  const hour = Number(part('hour'));
  const minutes = hour * 60 + Number(part('minute'));
  return hour < boundary.rolloverHour
    ? { date: addDays(date, -1), minutes: minutes + 24 * 60 }
    : { date, minutes };
}

/** The athlete's date at an instant in ms since 1970. */
export function localDate(instantMs: number, boundary: DayBoundary): string {
  return localTime(instantMs, boundary).date;
}

/** Minutes of the local clock on a date; a past date is over, Infinity, and a coming one has not begun. */
export function minutesOn(date: string, clock: LocalTime): number {
  if (date === clock.date) return clock.minutes;
  return date < clock.date ? Number.POSITIVE_INFINITY : -1;
}
