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

/** The athlete's date and time of day at an instant in ms since 1970; by UTC where the platform does not know the zone. */
export function localTime(instantMs: number, boundary: DayBoundary): LocalTime {
  const parts = clockOf(boundary.timeZone).formatToParts(instantMs);
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((p) => p.type === type)?.value ?? '';
  const date = `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`;
  const hour = Number(part('hour'));
  const minutes = hour * 60 + Number(part('minute'));
  return hour < boundary.rolloverHour
    ? { date: addDays(date, -1), minutes: minutes + 24 * 60 }
    : { date, minutes };
}

function clockOf(timeZone: string): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat('en-US', {
      timeZone,
      calendar: 'iso8601',
      numberingSystem: 'latn',
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
    });
  } catch (error) {
    if (!(error instanceof RangeError) || timeZone === 'UTC') throw error;
    return clockOf('UTC');
  }
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
