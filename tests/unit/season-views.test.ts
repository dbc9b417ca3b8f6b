import { fatAfter } from '@platewright/core/maintenance/energy-density.ts';
import type { Calipers } from '@platewright/core/records/kinds.ts';
import { addDays, datesUpTo, isoWeekday } from '@platewright/core/season/dates.ts';
import { aimOf } from '@platewright/core/season/phase-in-force.ts';
import { bodyView } from '@platewright/core/views/body.ts';
import { larderView } from '@platewright/core/views/larder.ts';
import { planView } from '@platewright/core/views/plan.ts';
import { rosterRow } from '@platewright/core/views/roster.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import { weekView } from '@platewright/core/views/week.ts';
import { describe, expect, it } from 'vitest';
import { athleteOf, callOf, entryOf, livedSeason, phaseOf, seasonOf, weighInOf } from '../support/season.ts';

const date = '2026-02-22';
const season = livedSeason(date, 60);

describe('week view', () => {
  const view = weekView(season, date);

  it('shows the call, 28 dates and their means', () => {
    expect(view.call?.day).toBe(date);
    expect(view.noCall).toBeNull();
    expect(view.days).toHaveLength(28);
    expect(view.days.at(-1)).toMatchObject({ date, complete: false, completeStated: true });
    expect(view.last28.completeDates).toBeLessThanOrEqual(27);
    expect(view.last28.weightKg).toBeGreaterThan(85);
    expect(view.last7.intake?.energyKcal).toBeGreaterThan(3000);
    expect(view.last7.prescribed?.proteinG).toBeGreaterThan(250);
  });

  it('lists earlier decisions newest first, and says when the next call is due', () => {
    const dates = view.earlierCalls.map((call) => call.date);
    expect(dates).toEqual(dates.toSorted().reverse());
    expect(view.dueOn).toBe(addDays(dates[0] ?? '', 7));
    expect(view.decision).toBeNull();
    expect(view.markInForceG).toBe(view.earlierCalls[0]?.markG);
  });

  it('keeps the call as it was once it is decided, and puts the new mark in force', () => {
    const decided = weekView({ ...season, calls: [...season.calls, callOf({ date, markG: 600 })] }, date);
    expect(decided.call).toEqual(view.call);
    expect(decided.decision?.markG).toBe(600);
    expect(decided.markInForceG).toBe(600);
    expect(decided.dueOn).toBe(addDays(date, 7));
    expect(decided.earlierCalls).toEqual(view.earlierCalls);
    expect(decided.days.at(-1)?.prescribed.carbohydrateG).toBe(600);
  });

  it('says with the call what the athlete stated, since a move of the mark can change what a medicine should be', () => {
    const athlete = athleteOf({ cautions: ['diabetes', 'pregnancy'] });
    const { cautions } = weekView({ ...season, athlete }, date);
    expect(cautions).toEqual([expect.stringMatching(/^Diabetes/), expect.stringMatching(/^Pregnancy/)]);
    expect(view.cautions).toEqual([]);
  });

  it('says stop, on the roster too, to somebody who logs every meal and eats next to nothing', () => {
    expect(rosterRow(season, date).stop).toBe(false);
    const entries = season.entries.map((entry) => ({ ...entry, grams: 0.3 * entry.grams }));
    const hungry = { ...season, entries };
    const { call, days } = weekView(hungry, date);
    expect(days.filter(({ complete }) => complete)).toEqual([]);
    expect(call?.cautions.map(({ code }) => code)).toContain('very-low-intake');
    expect(rosterRow(hungry, date).stop).toBe(true);
  });

  it('says why there is no call', () => {
    expect(weekView(seasonOf({ phases: [] }), date).noCall).toMatch(/No phase has started/);
    expect(weekView(seasonOf({ athlete: athleteOf({ birthYear: 2020 }) }), date).noCall).toMatch(
      /can’t be right: .*age/,
    );
    const empty = weekView(seasonOf(), date);
    expect(empty.call?.verdict).toBe('not-enough');
    expect(empty.dueOn).toBe(date);
    expect(empty.last28).toMatchObject({ weighIns: 0, weightKg: null, intake: null, prescribed: null });
  });

  it('forecasts marks around the one in force for a slider, in agreement with the call', () => {
    const { call, whatIf, markInForceG } = weekView(season, date);
    const marks = whatIf.map((fan) => fan.markG);
    expect(marks).toEqual(marks.toSorted((a, b) => a - b));
    const inForce = whatIf.find((fan) => fan.markG === markInForceG);
    expect(inForce?.points.at(-1)?.massKg.mean).toBeCloseTo(
      call?.forecast?.atOldMark.points.at(-1)?.massKg.mean ?? 0,
    );
    const ends = whatIf.map((fan) => fan.points.at(-1)?.massKg.mean ?? 0);
    expect(ends).toEqual(ends.toSorted((a, b) => a - b));
    expect(weekView(seasonOf(), date).whatIf).toEqual([]);
  });
});

describe('body view', () => {
  const view = bodyView(season, date);

  it('has a point with an interval for every date from the first weigh-in', () => {
    expect(view.points[0]?.date).toBe(season.weighIns[0]?.date);
    expect(view.points.at(-1)?.date).toBe(date);
    for (const { lineKg } of view.points) {
      expect(lineKg.interval90.low).toBeLessThan(lineKg.mean);
      expect(lineKg.interval90.high).toBeGreaterThan(lineKg.mean);
    }
    expect(view.points.flatMap((point) => point.weighIns)).toHaveLength(season.weighIns.length);
  });

  it('draws the aim from the last decision to four weeks ahead', () => {
    const { wedge } = view;
    expect(wedge?.from).toBe(season.calls.at(-1)?.date);
    expect(wedge?.to).toBe(addDays(date, 28));
    expect(wedge?.lowKg).toBeLessThan(wedge?.highKg ?? 0);
  });

  it('estimates fat from waist and neck, with the error of the method', () => {
    expect(view.fat?.errorPercent).toBe(3.5);
    expect(view.fat?.date).toBe(season.tape.at(-1)?.date);
    expect(bodyView({ ...season, tape: [] }, date).fat).toBeNull();
    expect(bodyView({ ...season, tape: [], athlete: athleteOf({ fatPercent: 14 }) }, date).fat?.percent).toBe(
      14,
    );
    const woman = athleteOf({ sex: 'female' });
    expect(bodyView({ ...season, athlete: woman }, date).fat).toBeNull();
  });

  it('says how the change of 4 and of 12 weeks splits, each as soon as the line goes back so far', () => {
    expect(bodyView(seasonOf({ weighIns: [weighInOf(date, 90)] }), date).leanShares).toEqual([]);
    expect(view.leanShares.map(({ weeks }) => weeks)).toEqual([4]);
    const shares = bodyView(livedSeason(date, 120), date).leanShares;
    expect(shares.map(({ weeks }) => weeks)).toEqual([4, 12]);
    for (const { share, leanKg, fatKg, from } of shares) {
      expect(from).toEqual(['energy', 'tape']);
      for (const part of [leanKg, fatKg, ...(share === null ? [] : [share])]) {
        expect(part.interval90.low).toBeLessThanOrEqual(part.mean);
        expect(part.interval90.high).toBeGreaterThanOrEqual(part.mean);
      }
    }
    expect(shares[1]?.share?.mean).toBeGreaterThanOrEqual(0);
  });

  describe('splits a change', () => {
    /** Weighed alone, 0.03 kg more a day: nothing but the Forbes curve tells the split. */
    const grown = (days: number, change: Partial<SeasonRecords> = {}) =>
      bodyView(
        seasonOf({
          athlete: athleteOf({ startMassKg: 90, fatPercent: 20 }),
          weighIns: datesUpTo(date, days).map((day, i) =>
            weighInOf(day, Math.round(10 * (90 + 0.03 * i)) / 10),
          ),
          ...change,
        }),
        date,
      ).leanShares.find(({ weeks }) => weeks === 12)?.share?.mean;

    it('by the fat that calipers of late found, not by what was given at set-up', () => {
      const calipers = (on: string): Calipers[] => [
        {
          ...{ id: `folds-${on}`, athlete: 'athlete-1', date: on, method: 'jackson-pollock 3' },
          folds: { chest: 10, abdomen: 20, thigh: 10 },
        },
      ];
      const before = addDays(date, -90);
      // 12.12 % of the 90.9 kg of the window's first morning.
      expect(grown(120, { calipers: calipers(before) })).toBeCloseTo(10.4 / (10.4 + 11.0), 2);
      expect(grown(120, { calipers: calipers(addDays(date, -10)) })).toBeCloseTo(grown(120) ?? 0, 9);
    });

    it('by the fat of the set-up moved along the Forbes curve, not kept at its share', () => {
      const gained = 0.03 * (330 - 85);
      expect(grown(330)).toBeCloseTo(10.4 / (10.4 + fatAfter(18, gained)), 2);
      expect(10.4 / (10.4 + fatAfter(18, gained))).toBeLessThan(10.4 / (10.4 + 0.2 * (90 + gained)) - 0.02);
    });

    it('without the food of today, which no scale has seen', () => {
      const feast = entryOf({ id: 'feast', date, grams: 2000 });
      const whole = { id: `day-${date}`, athlete: 'athlete-1', date, complete: true };
      const fed = { ...season, entries: [...season.entries, feast], days: [whole] };
      const without = view.leanShares[0]?.share?.mean ?? Number.NaN;
      expect(bodyView(fed, date).leanShares[0]?.share?.mean).toBeCloseTo(without, 6);
    });
  });

  it('takes fat from the newest of calipers and tape, and lets neither speak after eight weeks', () => {
    const folded = (
      on: string,
      folds: Calipers['folds'] = { chest: 10, abdomen: 20, thigh: 10 },
    ): Calipers => ({
      ...{ id: `folds-${on}`, athlete: 'athlete-1', date: on },
      ...{ method: 'jackson-pollock 3', folds },
    });
    const fatAfter = (...calipers: Calipers[]) => bodyView({ ...season, calipers }, date).fat;
    // Three folds of 40 mm at 30 years: 12.12 % by Jackson and Pollock 1978.
    expect(fatAfter(folded(date))).toMatchObject({ date, method: '3 skinfolds, Jackson and Pollock 1978' });
    expect(fatAfter(folded(date))?.percent).toBeCloseTo(12.12, 2);
    expect(fatAfter(folded(addDays(date, -20)))).toEqual(view.fat);
    expect(fatAfter(folded(addDays(date, -2)), folded(addDays(date, -1), { chest: 10 }))?.date).toBe(
      addDays(date, -2),
    );
    const calipers = [folded(addDays(date, -57))];
    expect(bodyView({ ...season, tape: [], calipers }, date).fat).toBeNull();
    expect(bodyView({ ...season, calipers: [folded(date, { chest: 10 })] }, date).calipers[0]).toMatchObject({
      sumMm: null,
      fat: null,
    });
  });

  it('gives the fat-free mass index with the error of fat, or none without an estimate of fat', () => {
    const index = view.fatFreeIndex;
    expect(index?.normalised).toBeCloseTo(index?.raw ?? 0, 9);
    const massKg = view.points.at(-1)?.lineKg.mean ?? 0;
    expect(index?.error).toBeCloseTo((massKg * 0.035) / 1.8 ** 2, 6);
    expect(bodyView({ ...season, tape: [] }, date).fatFreeIndex).toBeNull();
  });

  it('tells the change of four weeks by tissue, so that another scale makes no gain of it', () => {
    const noise = [0.3, -0.4, 0.1, -0.2, 0.5, -0.3, 0];
    const weighIns = datesUpTo(date, 90).map((on, i) =>
      weighInOf(on, Math.round(10 * (85 + 0.03 * i + (noise[i % 7] ?? 0) + (i >= 70 ? 2.5 : 0))) / 10),
    );
    const { fourWeeksKg, pace, points } = bodyView(seasonOf({ weighIns }), date);
    const line = (day: number) => points.at(day)?.lineKg.mean ?? 0;
    expect(line(-1) - line(-29)).toBeGreaterThan(2);
    expect(fourWeeksKg?.mean).toBeLessThan(1.5);
    const byPace = ((pace?.meanPercentPerWeek ?? Number.NaN) / 100) * 85 * 4;
    expect(Math.abs((fourWeeksKg?.mean ?? Number.NaN) - byPace)).toBeLessThan(0.5);
    expect(bodyView(seasonOf({ weighIns: weighIns.slice(-28) }), date).fourWeeksKg).toBeNull();
  });

  it('says no pace while there is too little to say one', () => {
    expect(bodyView(seasonOf({ weighIns: [weighInOf(date, 90)] }), date).pace).toBeNull();
    expect(view.pace).not.toBeNull();
  });

  it('is empty, not broken, without a weigh-in', () => {
    const empty = bodyView(seasonOf(), date);
    expect(empty).toMatchObject({ points: [], pace: null, fourWeeksKg: null, wedge: null, leanShares: [] });
    expect(empty.bodyMassInForceKg).toBeCloseTo(90.72, 2);
  });
});

describe('plan view', () => {
  it('shows both kinds of day, the phases in order and fourteen dates', () => {
    const phases = [phaseOf({ id: 'b', from: '2026-03-01', aim: 'pre-contest' }), phaseOf({ id: 'a' })];
    const view = planView(seasonOf({ phases }), date);
    expect(view.phases.map((phase) => phase.id)).toEqual(['a', 'b']);
    expect(view.phaseInForce).toBe('a');
    expect(view.session.carbohydrate.quickG).toBeGreaterThan(0);
    expect(view.recovery.carbohydrate.quickG).toBe(0);
    expect(view.calendar).toHaveLength(14);
    expect(view.calendar.at(7)).toMatchObject({ date: '2026-03-01', weekday: 7, phase: 'pre-contest' });
    for (const day of view.calendar) expect(day.weekday).toBe(isoWeekday(day.date));
  });

  it('holds before the first phase', () => {
    const view = planView(seasonOf({ phases: [] }), date);
    expect(view.phaseInForce).toBeNull();
    expect(new Set(view.calendar.map(({ phase }) => phase))).toEqual(new Set(['hold']));
    expect(aimOf(null)).toEqual({ phase: 'hold', pacePercentPerWeek: 0, band: { low: -0.15, high: 0.15 } });
  });
});

describe('larder view', () => {
  const food = (id: string, name: string, change = {}) => ({
    id,
    athlete: 'athlete-1',
    name,
    aliases: [],
    state: 'dry' as const,
    per100: entryOf().per100,
    portions: [],
    ...change,
  });

  it('sorts by name, marks own and hidden foods, and tells a label that can’t be right', () => {
    const wrong = { energyKcal: 900, proteinG: 10, carbohydrateG: 20, fatG: 5 };
    const view = larderView(
      seasonOf({
        foods: [
          food('starter-20038', 'oats'),
          food('a', 'Apple', { hidden: true }),
          food('c', 'Powder', { per100: wrong }),
        ],
      }),
    );
    expect(view.foods.map((row) => row.food.name)).toEqual(['Apple', 'oats', 'Powder']);
    expect(view.foods.map((row) => row.own)).toEqual([true, false, true]);
    expect(view.foods.map((row) => row.hidden)).toEqual([true, false, false]);
    expect(view.foods.map((row) => row.labelAgrees)).toEqual([true, true, false]);
    expect(view.foods[2]?.labelWords).not.toBe('');
  });

  it('adds up standing meals, and counts nothing for a food that is gone', () => {
    const items = [
      { food: 'b', grams: 50 },
      { food: 'gone', grams: 100 },
    ];
    const view = larderView(
      seasonOf({
        foods: [food('b', 'Oats')],
        standingMeals: [{ id: 's', athlete: 'athlete-1', name: 'First', items }],
      }),
    );
    expect(view.standingMeals[0]?.sums.energyKcal).toBe(194.5);
    expect(view.standingMeals[0]?.items.map((item) => item.name)).toEqual(['Oats', null]);
  });
});
