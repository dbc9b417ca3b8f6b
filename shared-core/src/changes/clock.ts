import * as z from 'zod/mini';

/**
 * Hybrid logical clock (Kulkarni, Demirbas et al. 2014) as text that sorts in clock order:
 * 12 hex digits of milliseconds, 4 of counter, then the device, which breaks ties.
 */
export const clockPattern = /^[0-9a-f]{12}-[0-9a-f]{4}-[A-Za-z0-9]{1,40}$/;
export const clockSchema = z.string().check(z.regex(clockPattern, 'a clock'));
export type Clock = z.infer<typeof clockSchema>;

/** How far ahead of the daemon's time a clock may be before the daemon re-stamps it. */
export const MAX_AHEAD_MS = 5 * 60_000;

const MAX_COUNTER = 0xffff;

export function formatClock(ms: number, counter: number, device: string): Clock {
  return `${ms.toString(16).padStart(12, '0')}-${counter.toString(16).padStart(4, '0')}-${device}`;
}

export function clockTime(clock: Clock): number {
  return Number.parseInt(clock.slice(0, 12), 16);
}

/** The device that made a stamp. */
export function clockDevice(clock: Clock): string {
  return clock.slice(18);
}

function clockCounter(clock: Clock): number {
  return Number.parseInt(clock.slice(13, 17), 16);
}

/**
 * The next stamp of `device`: later than `latest` (the highest clock this device has made or seen) and not before `nowMs`.
 * A full counter is carried into the next millisecond, so a stopped or backward wall clock never stops an edit.
 */
export function nextClock(latest: Clock | null, nowMs: number, device: string): Clock {
  if (latest === null || nowMs > clockTime(latest)) return formatClock(nowMs, 0, device);
  const counter = clockCounter(latest) + 1;
  return counter > MAX_COUNTER
    ? formatClock(clockTime(latest) + 1, 0, device)
    : formatClock(clockTime(latest), counter, device);
}

export function laterClock(a: Clock | null, b: Clock | null): Clock | null {
  if (a === null) return b;
  return b === null || a >= b ? a : b;
}
