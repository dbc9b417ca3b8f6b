import { addDays, datesUpTo, daysBetween, isoWeekday } from '@platewright/core/season/dates.ts';
import { kindOfDay } from '@platewright/core/season/kind-of-day.ts';
import { localDate, localTime } from '@platewright/core/season/local-date.ts';
import { phaseInForce } from '@platewright/core/season/phase-in-force.ts';
import { formatLongDay, formatWeekday } from '@platewright/core/ui/format-date.ts';
import { describe, expect, it } from 'vitest';
import { phaseOf } from '../support/season.ts';

describe('calendar dates', () => {
  it('adds across months, leap days and years', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2026-02-28', 1)).toBe('2026-03-01');
    expect(addDays('2026-01-01', -1)).toBe('2025-12-31');
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
    expect(daysBetween('2026-03-30', '2026-03-28')).toBe(-2);
    expect(addDays('0099-12-31', 1)).toBe('0100-01-01');
  });

  it('knows no date that is not in the calendar', () => {
    for (const none of ['2026-02-29', '2026-13-01', '2026-00-10', '2026-1-5', '2026-04-31', 'today'])
      expect(daysBetween(none, '2026-03-01')).toBeNaN();
  });

  it('lists dates up to the last one', () => {
    expect(datesUpTo('2026-03-01', 3)).toEqual(['2026-02-27', '2026-02-28', '2026-03-01']);
  });

  it('numbers weekdays by ISO 8601', () => {
    expect(isoWeekday('1970-01-01')).toBe(4);
    expect(isoWeekday('2026-02-02')).toBe(1);
    expect(isoWeekday('2026-02-08')).toBe(7);
    expect(isoWeekday('1969-12-31')).toBe(3);
  });
});

describe('the athlete’s date', () => {
  const at = Date.parse;

  it('changes at the roll-over hour of the athlete’s own clock', () => {
    const berlin = { timeZone: 'Europe/Berlin', rolloverHour: 3 };
    expect(localDate(at('2026-02-03T01:59:00Z'), berlin)).toBe('2026-02-02');
    expect(localDate(at('2026-02-03T02:00:00Z'), berlin)).toBe('2026-02-03');
    expect(localTime(at('2026-02-03T01:59:00Z'), berlin)).toEqual({
      date: '2026-02-02',
      minutes: 26 * 60 + 59,
    });
    expect(localTime(at('2026-02-03T12:30:00Z'), berlin)).toEqual({
      date: '2026-02-03',
      minutes: 13 * 60 + 30,
    });
  });

  it('crosses the date line and the year', () => {
    expect(localDate(at('2025-12-31T12:00:00Z'), { timeZone: 'Pacific/Kiritimati', rolloverHour: 0 })).toBe(
      '2026-01-01',
    );
    expect(localDate(at('2026-01-01T09:00:00Z'), { timeZone: 'Pacific/Pago_Pago', rolloverHour: 0 })).toBe(
      '2025-12-31',
    );
  });

  it('keeps one date through the night when the clocks are put forward', () => {
    const berlin = { timeZone: 'Europe/Berlin', rolloverHour: 3 };
    expect(localDate(at('2026-03-29T00:59:00Z'), berlin)).toBe('2026-03-28');
    expect(localDate(at('2026-03-29T01:00:00Z'), berlin)).toBe('2026-03-29');
  });

  it('goes by UTC where a zone is not known', () => {
    const mars = { timeZone: 'Mars/Olympus', rolloverHour: 3 };
    expect(localTime(at('2026-02-03T02:59:00Z'), mars)).toEqual({
      date: '2026-02-02',
      minutes: 26 * 60 + 59,
    });
  });
});

describe('kind of day', () => {
  it('follows weekdays', () => {
    const training = { kind: 'weekdays', days: [1, 4] } as const;
    expect(kindOfDay({ ...training, days: [...training.days] }, '2026-02-02')).toBe('session');
    expect(kindOfDay({ ...training, days: [...training.days] }, '2026-02-03')).toBe('recovery');
  });

  it('repeats a cycle both ways from its start', () => {
    const cycle = {
      kind: 'cycle' as const,
      start: '2026-02-02',
      days: ['session', 'session', 'recovery'] as ('session' | 'recovery')[],
    };
    const kinds = ['2026-01-31', '2026-02-01', '2026-02-02', '2026-02-04', '2026-02-05'].map((date) =>
      kindOfDay(cycle, date),
    );
    expect(kinds).toEqual(['session', 'recovery', 'session', 'recovery', 'session']);
  });
});

describe('phase in force', () => {
  it('is the one with the latest start that has come', () => {
    const phases = [phaseOf({ id: 'b', from: '2026-03-01' }), phaseOf({ id: 'a', from: '2026-01-01' })];
    expect(phaseInForce(phases, '2025-12-31')).toBeNull();
    expect(phaseInForce(phases, '2026-02-28')?.id).toBe('a');
    expect(phaseInForce(phases, '2026-03-01')?.id).toBe('b');
  });
});

describe('a date for reading', () => {
  it('has its year where it is seen from another one', () => {
    expect(formatWeekday('2025-03-03')).toBe('Mon 3 Mar');
    expect(formatWeekday('2025-03-03', '2025-11-26')).toBe('Mon 3 Mar');
    expect(formatWeekday('2025-03-03', '2026-03-03')).toBe('Mon 3 Mar 2025');
    expect(formatLongDay('2025-03-03')).toBe('Monday 3 March');
    expect(formatLongDay('2025-03-03', true)).toBe('Monday 3 March 2025');
  });
});
