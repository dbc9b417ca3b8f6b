import { nextMark } from '@platewright/core/lifts/next-mark.ts';
import { brzyckiKg, epleyKg, repMax } from '@platewright/core/lifts/rep-max.ts';
import { repMaxTrend } from '@platewright/core/lifts/rep-max-trend.ts';
import { describe, expect, it } from 'vitest';

describe('rep max', () => {
  // Epley 1985 and Brzycki 1993; values computed from the formulas.
  it.each([
    [100, 5, 116.67, 112.5],
    [100, 8, 126.67, 124.14],
    [100, 10, 133.33, 133.33],
    [225, 6, 270, 261.29],
  ])('of %d × %d by Epley and Brzycki', (load, repetitions, epley, brzycki) => {
    expect(epleyKg(load, repetitions)).toBeCloseTo(epley, 2);
    expect(brzyckiKg(load, repetitions)).toBeCloseTo(brzycki, 2);
    expect(repMax(load, repetitions)?.kg).toBeCloseTo((epley + brzycki) / 2, 1);
  });

  it('is the load at one repetition and unknown above ten', () => {
    expect(repMax(100, 1)).toEqual({ kg: 100, sdKg: 0 });
    expect(repMax(100, 11)).toBeNull();
    expect(repMax(0, 5)).toBeNull();
    expect(repMax(100, Number.NaN)).toBeNull();
  });

  it('is less sure the more repetitions it is told from', () => {
    expect(repMax(100, 8)?.sdKg).toBeGreaterThan(repMax(100, 3)?.sdKg ?? Number.POSITIVE_INFINITY);
  });
});

describe('trend of the rep max', () => {
  const sets = Array.from({ length: 8 }, (_, week) => ({
    day: 7 * week,
    loadKg: 100 + week,
    repetitions: 5,
  }));

  it('follows the bar in % a week', () => {
    const trend = repMaxTrend(sets);
    expect(trend?.sessions).toBe(8);
    expect(trend?.percentPerWeek.mean).toBeCloseTo(100 / 103.5, 9);
    const [first, middle, last] = trend?.line ?? [];
    expect(last?.day).toBe(49);
    expect(last?.kg.mean).toBeCloseTo((107 * (7 / 6 + 36 / 32)) / 2, 9);
    expect(first?.kg.mean).toBeCloseTo((100 * (7 / 6 + 36 / 32)) / 2, 9);
    expect(middle?.kg.interval90.low).toBe(middle?.kg.interval90.high);
  });

  it('is not turned by one session gone wrong', () => {
    const spoilt = sets.map((set, index) => (index === 7 ? { ...set, loadKg: 40 } : set));
    expect(repMaxTrend(spoilt)?.percentPerWeek.mean).toBeGreaterThan(0.5);
  });

  it('widens to both sides of the middle by the interval of the slope', () => {
    const uneven = sets.map((set, index) => ({ ...set, loadKg: set.loadKg + (index % 3) }));
    for (const { day, kg } of repMaxTrend(uneven)?.line ?? []) {
      expect(kg.interval90.low).toBeLessThanOrEqual(kg.mean + 1e-9);
      expect(kg.interval90.high).toBeGreaterThanOrEqual(kg.mean - 1e-9);
      if (day === 49) expect(kg.interval90.high - kg.interval90.low).toBeGreaterThan(1);
    }
  });

  it('counts the best set of a day', () => {
    const lighter = sets.map((set) => ({ ...set, loadKg: set.loadKg - 20 }));
    expect(repMaxTrend([...sets, ...lighter])).toEqual(repMaxTrend(sets));
  });

  it('waits for four sessions in two weeks', () => {
    expect(repMaxTrend(sets.slice(0, 3))).toBeNull();
    expect(repMaxTrend(sets.slice(0, 4).map((set, index) => ({ ...set, day: index })))).toBeNull();
    expect(repMaxTrend([])).toBeNull();
  });
});

describe('next mark', () => {
  it.each([
    [100, 8, 2.5, 102.5, 8, 'plate'],
    [40, 8, 2.5, 40, 9, 'repetition'],
    [40, 12, 2.5, 42.5, 12, 'plate'],
    [0, 5, 2.5, 0, 6, 'repetition'],
  ] as const)(
    'after %d kg × %d with steps of %d kg',
    (load, repetitions, step, nextLoad, nextRepetitions, by) => {
      expect(nextMark(load, repetitions, step)).toMatchObject({
        loadKg: nextLoad,
        repetitions: nextRepetitions,
        by,
      });
    },
  );
});
