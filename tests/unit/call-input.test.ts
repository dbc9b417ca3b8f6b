import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import { kinds } from '@platewright/core/records/kinds.ts';
import { limits, mostMarkG } from '@platewright/core/records/limits.ts';
import { datesUpTo } from '@platewright/core/season/dates.ts';
import { callInput } from '@platewright/core/views/call-input.ts';
import { readCall } from '@platewright/core/views/read-call.ts';
import { describe, expect, it } from 'vitest';
import { athleteOf, callOf, entryOf, livedSeason, phaseOf, seasonOf, weighInOf } from '../support/season.ts';

const date = '2026-02-02';

describe('what the weekly call looks at', () => {
  it('runs from the first weigh-in or entry to the date, none left out, oldest first', () => {
    const input = callInput(
      seasonOf({
        weighIns: [weighInOf('2026-01-31', 90.5), weighInOf('2026-01-30', 90)],
        entries: [entryOf({ date: '2026-01-29' })],
      }),
      date,
    );
    expect(input.days.map(({ day }) => day)).toEqual([
      '2026-01-29',
      '2026-01-30',
      '2026-01-31',
      '2026-02-01',
      '2026-02-02',
    ]);
    expect(input.days.map(({ weightKg }) => weightKg)).toEqual([null, 90, 90.5, null, null]);
    expect(input.days.map(({ intake }) => intake === null)).toEqual([false, true, true, true, true]);
  });

  it('sees nothing that comes after the date', () => {
    const season = livedSeason('2026-02-22', 40);
    const cut = <T extends { date: string }>(items: readonly T[]) =>
      items.filter((item) => item.date <= date);
    const past = {
      ...season,
      weighIns: cut(season.weighIns),
      entries: cut(season.entries),
      tape: cut(season.tape),
      liftSets: cut(season.liftSets),
      calls: cut(season.calls),
      days: cut(season.days),
    };
    expect(callInput(season, date)).toEqual(callInput(past, date));
  });

  it('knows what the athlete stated at set-up', () => {
    const athlete = athleteOf({ cautions: ['pregnancy'] });
    expect(callInput(seasonOf({ athlete }), date).athlete.stated).toEqual(['pregnancy']);
  });

  it('leaves out a date that no one ate, and every number that is left can be reckoned with', () => {
    const per100 = { energyKcal: 85, proteinG: 0, carbohydrateG: 3, fatG: 0, alcoholG: 10 };
    const wine = (grams: number) =>
      callInput(seasonOf({ entries: [{ ...entryOf({ date }), per100, grams }] }), date);
    expect(wine(15_000).days.at(-1)?.intake).toMatchObject({ alcoholG: 1500 });
    expect(() => weeklyCall(wine(15_000))).not.toThrow();
    expect(wine(40_000).days.at(-1)?.intake).toBeNull();
  });

  it('can reckon with every mark and body mass that a decision may hold, and with the heaviest athlete', () => {
    const { id, athlete, ...decided } = callOf({
      date: '2026-01-20',
      proposedG: mostMarkG,
      markG: mostMarkG,
    });
    expect(kinds['weekly-call'].safeParse(decided).success).toBe(true);
    for (const slip of [{ markG: mostMarkG + 1 }, { proposedG: mostMarkG + 1 }, { bodyMassKg: 401 }])
      expect(kinds['weekly-call'].safeParse({ ...decided, ...slip }).success).toBe(false);
    const { id: _, athlete: __, ...phase } = phaseOf({ startMarkG: mostMarkG + 1 });
    expect(kinds.phase.safeParse(phase).success).toBe(false);
    const season = livedSeason(date, 30);
    const heaviest = { ...season.athlete, proteinGPerKg: 4.5 };
    for (const call of [decided, { ...decided, bodyMassKg: limits.weighInKg.most }])
      expect(() =>
        weeklyCall(callInput({ ...season, athlete: heaviest, calls: [{ id, athlete, ...call }] }, date)),
      ).not.toThrow();
  });

  it('takes the median of several weigh-ins of a date', () => {
    const twice = [90, 90.4, 97].map((kg, i) => ({ ...weighInOf(date, kg), id: `w${i}` }));
    expect(callInput(seasonOf({ weighIns: twice }), date).days.at(-1)?.weightKg).toBe(90.4);
  });

  it('leaves out the decision of the date itself, which is the one to be made', () => {
    const calls = [callOf({ date: '2026-01-26', markG: 540 }), callOf({ date, markG: 600 })];
    const input = callInput(seasonOf({ calls, weighIns: [weighInOf('2026-01-20', 90)] }), date);
    expect(input.calls).toEqual([{ day: '2026-01-26', decision: 'accepted', proposedG: 550, inForceG: 540 }]);
    expect(input.targets.carbohydrateG).toBe(540);
    expect(input.days.map(({ prescribed }) => prescribed?.carbohydrateG)).toEqual([
      ...Array(6).fill(525),
      ...Array(8).fill(540),
    ]);
  });

  it('has nothing prescribed before the first phase', () => {
    const input = callInput(
      seasonOf({ phases: [phaseOf({ from: date })], weighIns: [weighInOf('2026-02-01', 90)] }),
      date,
    );
    expect(input.days.map(({ prescribed }) => prescribed === null)).toEqual([true, false]);
    expect(input.aim.since).toBe(date);
  });

  it('takes a log as whole by what the athlete says, else by meals and energy', () => {
    const meals = (count: number, grams: number) =>
      Array.from({ length: count }, (_, i) => entryOf({ id: `e${i}`, meal: i + 1, grams, date }));
    const complete = (count: number, grams: number, said?: boolean) =>
      callInput(
        seasonOf({
          entries: meals(count, grams),
          days: said === undefined ? [] : [{ id: `day-${date}`, athlete: 'athlete-1', date, complete: said }],
        }),
        date,
      ).days.at(-1)?.intake?.complete;
    expect(complete(5, 160)).toBe(true);
    expect(complete(4, 250)).toBe(false);
    expect(complete(6, 100)).toBe(false);
    expect(complete(6, 170, false)).toBe(false);
    expect(complete(1, 50, true)).toBe(true);
  });

  it('keeps out what slipped from the keys, so that one record never takes the call away', () => {
    const input = callInput(
      seasonOf({
        entries: [entryOf({ date, grams: 20_000 })],
        weighIns: [weighInOf('1990-01-01', 80), weighInOf('2026-02-01', 90)],
        tape: [{ id: 't', athlete: 'athlete-1', date, site: 'waist', cm: 12 }],
      }),
      date,
    );
    expect(input.days.at(-1)?.intake).toBeNull();
    expect(input.waist).toEqual([]);
    expect(() => weeklyCall(input)).not.toThrow();
  });

  it('counts sodium only when every entry reports it', () => {
    const salted = entryOf({ id: 'a', date, per100: { ...entryOf().per100, sodiumMg: 100 } });
    const intake = (entries: ReturnType<typeof entryOf>[]) =>
      callInput(seasonOf({ entries }), date).days.at(-1)?.intake;
    expect(intake([salted])?.sodiumMg).toBe(100);
    expect(intake([salted, entryOf({ id: 'b', date })])).not.toHaveProperty('sodiumMg');
  });

  it('takes key lifts only, by name', () => {
    const lifts = [
      { id: 'l1', athlete: 'athlete-1', name: 'Squat', key: true, smallestStepKg: 2.5 },
      { id: 'l2', athlete: 'athlete-1', name: 'Curl', key: false, smallestStepKg: 1 },
    ];
    const liftSets = ['l1', 'l2'].map((lift) => ({
      id: `set-${lift}`,
      athlete: 'athlete-1',
      date,
      lift,
      loadKg: 100,
      repetitions: 5,
    }));
    expect(callInput(seasonOf({ lifts, liftSets }), date).keyLifts).toEqual([
      { day: date, lift: 'Squat', loadKg: 100, repetitions: 5 },
    ]);
  });

  it('takes the best set of a session only, so that warm-ups logged from some day on are no fall of the lift', () => {
    const lifts = [{ id: 'l1', athlete: 'athlete-1', name: 'Squat', key: true, smallestStepKg: 2.5 }];
    const sets = [
      ['2026-01-25', 100, 5],
      ['2026-02-01', 60, 5],
      ['2026-02-01', 101, 5],
      ['2026-02-01', 101, 3],
      ['2026-02-01', 90, 12],
    ] as const;
    const liftSets = sets.map(([on, loadKg, repetitions], n) => {
      return { id: `set-${n}`, athlete: 'athlete-1', date: on, lift: 'l1', loadKg, repetitions };
    });
    expect(callInput(seasonOf({ lifts, liftSets }), date).keyLifts).toEqual([
      { day: '2026-01-25', lift: 'Squat', loadKg: 100, repetitions: 5 },
      { day: '2026-02-01', lift: 'Squat', loadKg: 101, repetitions: 5 },
    ]);
  });

  it('takes body fat at the body mass of the set-up, which a history of weigh-ins need not begin with', () => {
    const athlete = athleteOf({ startMassKg: 80, fatPercent: 12 });
    const history = datesUpTo(date, 201).map((on, i) => weighInOf(on, Math.round(10 * (100 - 0.1 * i)) / 10));
    const { model } = readCall(seasonOf({ athlete, weighIns: history, phases: [] }), date);
    const { startFatKg, startMassKg } = model?.filter.setup ?? { startFatKg: 0, startMassKg: 0 };
    expect(startMassKg).toBeGreaterThan(99);
    // 9.6 kg at 80 kg: 12 % of 100 kg would leave 4 kg of them.
    expect(startFatKg - 9.6 + 10.4 * Math.log(startFatKg / 9.6)).toBeCloseTo(startMassKg - 80, 4);
  });

  it('takes the starts of cycles of women up to the date, in order', () => {
    const cycleStarts = ['2026-02-01', '2026-01-04', '2026-03-01'].map((start) => ({
      id: `cycle-${start}`,
      athlete: 'athlete-1',
      date: start,
    }));
    const athlete = athleteOf({ sex: 'female' });
    expect(callInput(seasonOf({ athlete, cycleStarts }), date).cycleStarts).toEqual([
      '2026-01-04',
      '2026-02-01',
    ]);
    expect(callInput(seasonOf({ athlete }), date)).not.toHaveProperty('cycleStarts');
    expect(callInput(seasonOf({ cycleStarts }), date)).not.toHaveProperty('cycleStarts');
  });

  it('takes the body fat that calipers told last, and none of old', () => {
    const calipers = ['2025-06-01', date].map((day, n) => ({
      id: `folds-${day}`,
      athlete: 'athlete-1',
      date: day,
      method: 'jackson-pollock 3' as const,
      folds: { chest: 5 + 5 * n, abdomen: 10, thigh: 8 },
    }));
    const newest = (records: typeof calipers) =>
      callInput(seasonOf({ calipers: records }), date).athlete.newestFatPercent;
    expect(newest(calipers.slice(0, 1))).toBeUndefined();
    expect(newest(calipers.toReversed())).toBeCloseTo(newest(calipers.slice(1)) ?? 0, 9);
    expect(newest(calipers)).toBeGreaterThan(5);
  });

  it('takes what moved the readings up to the date', () => {
    const shift = (day: string) => ({
      id: `shift-${day}`,
      athlete: 'athlete-1',
      date: day,
      cause: 'creatine' as const,
    });
    expect(
      callInput(seasonOf({ scaleShifts: ['2026-01-04', '2026-03-01'].map(shift) }), date).shifts,
    ).toEqual([{ day: '2026-01-04', cause: 'creatine' }]);
  });

  it('spreads the sessions’ cost over the days of the cycle', () => {
    const none = athleteOf({ training: { kind: 'weekdays', days: [] } });
    expect(callInput(seasonOf({ athlete: none }), date).athlete.exerciseKcal).toBe(0);
    expect(callInput(seasonOf(), date).athlete.exerciseKcal).toBeGreaterThan(100);
  });
});
