import { bodyweightLine } from '@platewright/core/call/bodyweight-line.ts';
import { fitDays } from '@platewright/core/call/fit.ts';
import type { CallInput } from '@platewright/core/call/input.ts';
import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import { whatIf } from '@platewright/core/call/what-if.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { describe, expect, it } from 'vitest';
import { callOfLife } from '../support/call-input.ts';

const lose: CallInput['aim'] = {
  phase: 'pre-contest',
  pacePercentPerWeek: -0.7,
  band: { low: -0.9, high: -0.5 },
};
const text = (input: CallInput, code: string) =>
  weeklyCall(input).evidence.find((item) => item.code === code)?.text ?? '';

describe('the verdicts and their words', () => {
  it('raises the mark when the athlete hardly gains', () => {
    const call = weeklyCall(callOfLife({ days: 56, kgPerWeek: 0 }));
    expect(call.verdict).toBe('up');
    expect(call.carbohydrateG).toBeGreaterThan(400);
    expect(call.carbohydrateG % 5).toBe(0);
    expect(call.summary[0]).toMatch(/^At 400 g of carbohydrate a day you would .* slower than your band\.$/);
    expect(call.summary[1]).toMatch(/^Raise the carbohydrate mark by \d+ g to \d+ g a day\.$/);
  });

  it('says what the band asks for when body mass goes the other way, or should stand', () => {
    const hold = { phase: 'hold', pacePercentPerWeek: 0, band: { low: -0.15, high: 0.15 } } as const;
    const said = (kgPerWeek: number, aim?: CallInput['aim']) =>
      weeklyCall(callOfLife({ days: 56, kgPerWeek }, aim ? { aim } : {})).summary[0];
    expect(said(-0.4)).toContain('lose about');
    expect(said(-0.4)).toContain('where your band asks for a gain');
    expect(said(0.4, lose)).toContain('where your band asks for a loss');
    expect(said(-0.4, hold)).toContain('where your band asks to hold');
    expect(said(-0.3, lose)).toContain('slower than your band');
  });

  it('lowers the mark when the athlete gains too fast', () => {
    const call = weeklyCall(callOfLife({ days: 56, kgPerWeek: 0.7 }));
    expect(call.verdict).toBe('down');
    expect(call.summary[0]).toContain('faster than your band');
    expect(call.summary[1]).toMatch(/^Lower the carbohydrate mark/);
  });

  it('holds inside the band', () => {
    const call = weeklyCall(callOfLife({ days: 56, kgPerWeek: 0.3 }));
    expect(call.verdict).toBe('hold');
    expect(call.carbohydrateG).toBe(400);
    expect(call.summary[1]).toBe('Hold 400 g: it does what it should.');
    expect(call.pace?.probabilityInside).toBeGreaterThan(0.6);
    expect(call.forecast?.atNewMark).toEqual(call.forecast?.atOldMark);
  });

  it('says what to record when there is too little', () => {
    const call = weeklyCall(callOfLife({ days: 10, weighed: (day) => day < 2 }));
    expect(call.verdict).toBe('not-enough');
    expect(call.carbohydrateG).toBe(400);
    expect(call.wouldChange.map(({ code }) => code)).toContain('more-weigh-ins');
    expect(weeklyCall(callOfLife({ days: 5, weighed: () => false })).maintenanceKcal).toBeNull();
    expect(weeklyCall({ ...callOfLife({ days: 0 }), days: [] }).verdict).toBe('not-enough');
  });

  it('works from day three, widely', () => {
    const call = weeklyCall(callOfLife({ days: 3 }));
    expect(call.verdict).not.toBe('not-enough');
    const { low = 0, high = 0 } = call.maintenanceKcal?.interval90 ?? {};
    expect(high - low).toBeGreaterThan(600);
  });

  it('asks to eat the plan first, with the numbers', () => {
    const lately = (day: number) => (day < 21 ? 1 : 0.88);
    const call = weeklyCall(callOfLife({ days: 35, kgPerWeek: -0.2, eats: lately }));
    expect(call.verdict).toBe('hold');
    expect(call.summary[1]).toMatch(
      /^Eat the plan first: the log stands 410 kcal a day under it, so the mark stays at 400 g\.$/,
    );
    expect(call.wouldChange[0]?.code).toBe('eat-the-plan');
  });

  it('asks the same when the log stands far off the plan from the first day', () => {
    const call = weeklyCall(callOfLife({ days: 21, kgPerWeek: -0.2, eats: 0.65 }));
    expect(call.verdict).toBe('hold');
    expect(call.summary[1]).toMatch(/^Eat the plan first/);
  });

  it.each([0.88, 0.75])('does not ask when the log has been off by the same share all along: %f', (eats) => {
    const call = weeklyCall(callOfLife({ days: 21, kgPerWeek: -0.2, eats }));
    expect(call.verdict).toBe('up');
    expect(call.evidence.find(({ code }) => code === 'eating')?.why).toContain('all along');
  });

  it('tells the pace of the last week, which counts a little', () => {
    const { evidence } = weeklyCall(callOfLife({ days: 42, kgPerWeek: 0.3 }));
    const item = evidence.find(({ code }) => code === 'last-week');
    expect(item?.numbers.meanPercentPerWeek).toBeCloseTo((100 * 0.3) / 86.5, 1);
    expect(item?.text).toMatch(/^Pace of the last 7 days is [+−]0\.\d+ % a week\.$/);
  });

  it('learns nothing about eating from one lonely log', () => {
    const life = { days: 20, kgPerWeek: 0.3, eats: 0.45 };
    const none = weeklyCall(callOfLife({ ...life, logged: () => false }));
    const input = callOfLife({ ...life, logged: (day) => day === 15 });
    const one = weeklyCall(input);
    expect(Math.abs(one.carbohydrateG - none.carbohydrateG)).toBeLessThanOrEqual(30);
    expect(one.evidence.find(({ code }) => code === 'eating')?.why).toContain('Too few');
  });

  it('steps at once when the aim changes, however short ago the mark moved', () => {
    const life = callOfLife({ days: 84, kgPerWeek: 0, markG: 400 });
    const day = life.days.at(-3)?.day ?? '';
    const calls: CallInput['calls'] = [{ day, decision: 'accepted', proposedG: 430, inForceG: 430 }];
    const since = life.days.at(-1)?.day ?? '';
    const call = weeklyCall({ ...life, calls, aim: { ...life.aim, since } });
    expect(call.verdict).toBe('up');
    expect(call.carbohydrateG - 400).toBeGreaterThan(60);
  });

  it('raises a mark under the guard of energy availability, whatever was logged', () => {
    const lately = (day: number) => (day < 28 ? 1 : 0.8);
    const call = weeklyCall(
      callOfLife({ days: 42, kgPerWeek: -0.7, markG: 60, eats: lately }, { aim: lose }),
    );
    expect(call.verdict).toBe('up');
    expect(call.summary[1]).toContain('too little energy');
  });

  it('warns of underweight and stops well under it', () => {
    const at = (startKg: number) =>
      weeklyCall(callOfLife({ days: 42, startKg, kgPerWeek: 0, noiseKg: 0.1 }, { aim: lose })).cautions.find(
        ({ code }) => code === 'low-body-mass',
      )?.level;
    expect([at(61), at(59), at(56)]).toEqual([undefined, 'warn', 'stop']);
  });

  it('judges by the band it drives at when the aim is beyond what a call will do', () => {
    const aim: CallInput['aim'] = {
      phase: 'pre-contest',
      pacePercentPerWeek: -1.5,
      band: { low: -2, high: -1.2 },
    };
    const call = weeklyCall(callOfLife({ days: 56, kgPerWeek: -0.85, markG: 300 }, { aim }));
    expect(call.summary[0]).toContain('inside your band');
    expect(call.verdict).toBe('hold');
  });

  it('reckons with a deviation that is a habit', () => {
    const call = weeklyCall(callOfLife({ days: 84, kgPerWeek: -0.2, eats: 0.88 }));
    expect(call.verdict).toBe('up');
    expect(text(callOfLife({ days: 84, kgPerWeek: -0.2, eats: 0.88 }), 'eating')).toContain('under the plan');
  });

  it('names the next levers in order at the floor', () => {
    const life = callOfLife({ days: 70, kgPerWeek: -0.1, markG: 30 }, { aim: lose });
    const call = weeklyCall({ ...life, athlete: { ...life.athlete, fatPercent: 30 } });
    expect(['down', 'hold']).toContain(call.verdict);
    expect(call.nextLevers.map(({ code }) => code)).toEqual(['fat', 'cardio', 'pace', 'date']);
    expect(call.cautions.map(({ code }) => code)).toContain('mark-at-floor');
  });

  it('stops and sends to a doctor when body mass falls very fast', () => {
    const call = weeklyCall(callOfLife({ days: 42, kgPerWeek: -2.2 }, { aim: lose }));
    expect(call.cautions[0]).toMatchObject({ level: 'stop' });
    expect(call.cautions[0]?.text).toContain('doctor');
    expect(call.verdict).not.toBe('down');
  });

  it.each([
    [0.15, 'hold'],
    // Clearly wrong: there is nothing to wait for.
    [0.05, 'up'],
  ])(
    'three days after the last change, at %d kg a week where it would go up, says %s',
    (kgPerWeek, verdict) => {
      const input = callOfLife({ days: 56, kgPerWeek });
      const day = input.days.at(-4)?.day ?? '';
      const calls: CallInput['calls'] = [{ day, decision: 'accepted', proposedG: 385, inForceG: 385 }];
      expect(weeklyCall(input).verdict).toBe('up');
      const call = weeklyCall({ ...input, calls });
      expect(call.verdict).toBe(verdict);
      expect(call.wouldChange.some(({ code }) => code === 'wait')).toBe(verdict === 'hold');
    },
  );
});

describe('composition as evidence', () => {
  const weekly = (count: number, at: (week: number) => number) =>
    Array.from({ length: count }, (_, week) => ({
      day: new Date(Date.UTC(2025, 0, 6) + (7 * week + 2) * 86_400_000).toISOString().slice(0, 10),
      value: at(week),
    }));

  it('aims lower when the waist outruns the pace', () => {
    const waist = weekly(8, (week) => 84 + 1.2 * week).map(({ day, value }) => ({ day, cm: value }));
    const plain = weeklyCall(callOfLife({ days: 56, kgPerWeek: 0.35 }));
    const call = weeklyCall(callOfLife({ days: 56, kgPerWeek: 0.35 }, { waist }));
    expect(call.cautions.map(({ code }) => code)).toContain('waist-ahead-of-pace');
    expect(call.carbohydrateG).toBeLessThanOrEqual(plain.carbohydrateG);
  });

  it('calls falling lifts with a standing waist probably muscle', () => {
    const waist = weekly(8, () => 82).map(({ day, value }) => ({ day, cm: value }));
    const lifts = (lift: string) =>
      weekly(8, (week) => 140 - 2.5 * week).map(({ day, value }) => ({
        day,
        lift,
        loadKg: value,
        repetitions: 5,
      }));
    const keyLifts = [...lifts('squat'), ...lifts('deadlift')].sort((a, b) => a.day.localeCompare(b.day));
    const call = weeklyCall(
      callOfLife({ days: 56, kgPerWeek: -0.7, markG: 250 }, { aim: lose, waist, keyLifts }),
    );
    expect(call.cautions.map(({ code }) => code)).toContain('probably-muscle');
    expect(call.verdict).not.toBe('down');
  });
});

describe('what if', () => {
  it('rises with the mark and agrees with the call at its own marks', () => {
    const input = callOfLife({ days: 56, kgPerWeek: 0 });
    const call = weeklyCall(input);
    const model = fitDays(input);
    const fans = model === null ? [] : whatIf(input, model);
    const at = (markG: number) => fans.find((fan) => fan.markG === markG);
    const ends = fans.map((fan) => fan.points.at(-1)?.massKg.mean ?? Number.NaN);
    expect(ends).toEqual(ends.toSorted((a, b) => a - b));
    expect(at(call.markInForceG)).toEqual(call.forecast?.atOldMark);
    expect(fans.every((fan) => fan.points.length === 29)).toBe(true);
  });

  it('begins on the bodyweight line of the day of the call, and goes on from there', () => {
    const input = callOfLife({ days: 56, kgPerWeek: 0.4 });
    const today = bodyweightLine(input).at(-1);
    const points = weeklyCall(input).forecast?.atOldMark.points ?? [];
    expect(points[0]).toEqual({ day: today?.day, massKg: today?.massKg });
    expect(points[1]?.day).toBe(addDays(today?.day ?? '', 1));
    expect((points[1]?.massKg.mean ?? 0) - (points[0]?.massKg.mean ?? 0)).toBeCloseTo(0.4 / 7, 1);
  });
});

describe('readings that are odd', () => {
  it('leaves a single odd reading out and says so', () => {
    const input = callOfLife({ days: 40, kgPerWeek: 0.3 });
    const days = input.days.map((day, row) => (row === 35 ? { ...day, weightKg: 95 } : day));
    const plain = weeklyCall(input);
    const call = weeklyCall({ ...input, days });
    expect(
      Math.abs((call.pace?.meanPercentPerWeek ?? 9) - (plain.pace?.meanPercentPerWeek ?? 0)),
    ).toBeLessThan(0.1);
    expect(text({ ...input, days }, 'odd-weigh-ins')).toContain('1 left out');
  });

  it('believes another scale after a few days and does not call it tissue', () => {
    const input = callOfLife({ days: 50, kgPerWeek: 0.3, noiseKg: 0.25 });
    const days = input.days.map((day, row) =>
      row >= 38 && day.weightKg !== null ? { ...day, weightKg: day.weightKg + 3 } : day,
    );
    const call = weeklyCall({ ...input, days });
    expect(Math.abs((call.pace?.meanKgPerWeek ?? 9) - 0.3)).toBeLessThan(0.3);
    expect(text({ ...input, days }, 'scale-shift')).toContain('not counted as tissue');
    const line = bodyweightLine({ ...input, days });
    expect(Math.abs((line.at(-1)?.massKg.mean ?? 0) - (days.at(-1)?.weightKg ?? 0))).toBeLessThan(1.2);
  });
});

describe('input that cannot be', () => {
  const input = callOfLife({ days: 20 });
  it.each([
    ['a weight that is no number', { days: [{ ...input.days[0], weightKg: Number.NaN }] }],
    ['a weight of a ton', { days: [{ ...input.days[0], weightKg: 1000 }] }],
    ['days out of order', { days: [...input.days].reverse() }],
    ['a day twice', { days: [input.days[0], input.days[0]] }],
    ['no date', { days: [{ ...input.days[0], day: '2025-02-30' }] }],
    ['a band upside down', { aim: { ...input.aim, band: { low: 1, high: 0 } } }],
  ])('refuses %s', (_, wrong) => {
    expect(() => weeklyCall(Object.assign({}, input, wrong))).toThrow(RangeError);
  });

  it('asks for one of a date only where a second would be refused', () => {
    const [first, second] = ['2025-01-07', '2025-01-06'].map((day) => ({ day, cm: 80 }));
    const waist = [first, first, second].flatMap((reading) => reading ?? []);
    expect(() => weeklyCall({ ...input, waist })).toThrow(/^waist\[2\] .* is out of order: oldest first\.$/);
    const days = [...input.days].reverse();
    expect(() => weeklyCall({ ...input, days })).toThrow(/: oldest first, one for each date\.$/);
  });
});
