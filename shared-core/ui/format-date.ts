import { isoWeekday } from '../src/season/dates.ts';

const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const months = [
  ...['January', 'February', 'March', 'April', 'May', 'June'],
  ...['July', 'August', 'September', 'October', 'November', 'December'],
];
/** So many letters name a weekday or a month in short. */
const short = 3;
/** Monday first: `Mon`, `Tue`. */
export const weekdaysInShort = weekdays.map((name) => name.slice(0, short));

/** An ISO date as `3 Mar`. */
export function formatDay(date: string): string {
  return `${dayOfMonth(date)} ${formatMonth(date)}`;
}

/** An ISO date as `3 Mar 2025`. */
export function formatDayOfYear(date: string): string {
  return `${formatDay(date)} ${yearOf(date)}`;
}

/** An ISO date as `Mon 3 Mar`, and seen from another year as `Mon 3 Mar 2025`. */
export function formatWeekday(date: string, from = date): string {
  const day = yearOf(date) === yearOf(from) ? formatDay(date) : formatDayOfYear(date);
  return `${weekday(date).slice(0, short)} ${day}`;
}

/** An ISO date as `Monday 3 March`, or with its year as `Monday 3 March 2025`. */
export function formatLongDay(date: string, withYear = false): string {
  return `${weekday(date)} ${dayOfMonth(date)} ${month(date)}${withYear ? ` ${yearOf(date)}` : ''}`;
}

/** An ISO date as `Mar`. */
export function formatMonth(date: string): string {
  return month(date).slice(0, short);
}

function yearOf(date: string): string {
  return date.slice(0, 4);
}

function weekday(date: string): string {
  return weekdays[isoWeekday(date) - 1] ?? '';
}

function month(date: string): string {
  return months[Number(date.slice(5, 7)) - 1] ?? '';
}

function dayOfMonth(date: string): number {
  return Number(date.slice(8, 10));
}
