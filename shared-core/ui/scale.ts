import { addDays } from '../src/season/dates.ts';
import { formatDay, formatMonth } from './format-date.ts';

/** Maps a value of a domain to a pixel. */
export type Scale = (value: number) => number;

/** A straight scale from `domain` to `range`; a domain without extent maps to the middle. */
export function linearScale(domain: readonly [number, number], range: readonly [number, number]): Scale {
  const [from, to] = domain;
  const [start, end] = range;
  if (from === to) return () => (start + end) / 2;
  return (value) => start + ((value - from) / (to - from)) * (end - start);
}

/** Round values inside a domain, about `count` of them, in steps of 1, 2 or 5 times a power of ten. */
export function ticks(low: number, high: number, count: number): number[] {
  if (!(high > low)) return [low];
  const rough = (high - low) / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((size) => size >= rough) ?? 10 * power;
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * step);
}

interface DateTick {
  /** Days after the start of the axis. */
  day: number;
  label: string;
}

/** Marks of a time axis of some days from a date: weeks while they are few, else months, thinned to `room` marks. */
export function dateTicks(start: string, days: number, room: number): DateTick[] {
  const marks = days <= 70 ? everyWeek(start, days) : everyMonth(start, days);
  const every = Math.max(1, Math.ceil(marks.length / Math.max(1, room)));
  return marks.filter((_, index) => index % every === 0);
}

function everyWeek(start: string, days: number): DateTick[] {
  return Array.from({ length: Math.floor(days / 7) + 1 }, (_, week) => ({
    day: 7 * week,
    label: formatDay(addDays(start, 7 * week)),
  }));
}

function everyMonth(start: string, days: number): DateTick[] {
  const marks: DateTick[] = [];
  for (let day = 0; day <= days; day++) {
    const date = addDays(start, day);
    if (!date.endsWith('-01')) continue;
    marks.push({ day, label: date.endsWith('-01-01') ? date.slice(0, 4) : formatMonth(date) });
  }
  return marks;
}
