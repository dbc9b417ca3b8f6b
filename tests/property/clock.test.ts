import {
  clockSchema,
  clockTime,
  formatClock,
  laterClock,
  nextClock,
} from '@platewright/core/changes/clock.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const ms = fc.integer({ min: 0, max: 0xffff_ffff_ffff - 1 });
const counter = fc.oneof(fc.integer({ min: 0, max: 0xffff }), fc.constantFrom(0, 0xfffe, 0xffff));
const device = fc.stringMatching(/^[A-Za-z0-9]{1,40}$/);
const clock = fc.tuple(ms, counter, device).map(([time, count, name]) => formatClock(time, count, name));

/** Order of two strings as the stores and the merge compare them. */
function order<T>(a: T, b: T): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

describe('hybrid logical clock (Kulkarni, Demirbas et al. 2014)', () => {
  it('sorts as text by time, then counter, then device', () => {
    fc.assert(
      fc.property(ms, counter, device, ms, counter, device, (t1, c1, d1, t2, c2, d2) => {
        const expected = order(t1, t2) || order(c1, c2) || order(d1, d2);
        expect(order(formatClock(t1, c1, d1), formatClock(t2, c2, d2))).toBe(expected);
      }),
    );
  });

  it('is a clock by the schema, and gives its time back', () => {
    fc.assert(
      fc.property(ms, counter, device, (time, count, name) => {
        const text = formatClock(time, count, name);
        expect(clockSchema.safeParse(text).success).toBe(true);
        expect(clockTime(text)).toBe(time);
      }),
    );
  });

  it('stamps later than all that was seen, and not before the wall clock', () => {
    fc.assert(
      fc.property(fc.option(clock), ms, device, (latest, now, name) => {
        const stamp = nextClock(latest, now, name);
        expect(clockSchema.safeParse(stamp).success).toBe(true);
        if (latest !== null) expect(stamp > latest).toBe(true);
        expect(clockTime(stamp)).toBeGreaterThanOrEqual(now);
      }),
    );
  });

  it('stays monotone on one device while the wall clock stands, jumps and runs backwards', () => {
    fc.assert(
      fc.property(device, fc.array(ms, { minLength: 2, maxLength: 50 }), (name, walls) => {
        let latest: string | null = null;
        for (const now of walls) {
          const stamp: string = nextClock(latest, now, name);
          if (latest !== null) expect(stamp > latest).toBe(true);
          latest = stamp;
        }
      }),
    );
  });

  it('carries a full counter into the next millisecond', () => {
    const full = formatClock(1000, 0xffff, 'b');
    expect(nextClock(full, 500, 'a')).toBe(formatClock(1001, 0, 'a'));
    expect(nextClock(full, 1000, 'a')).toBe(formatClock(1001, 0, 'a'));
    expect(nextClock(full, 1002, 'a')).toBe(formatClock(1002, 0, 'a'));
  });

  it('has one later of two, whichever is asked first', () => {
    fc.assert(
      fc.property(fc.option(clock), fc.option(clock), (a, b) => {
        expect(laterClock(a, b)).toBe(laterClock(b, a));
        const later = laterClock(a, b);
        for (const one of [a, b]) if (one !== null) expect(later !== null && later >= one).toBe(true);
      }),
    );
  });
});
