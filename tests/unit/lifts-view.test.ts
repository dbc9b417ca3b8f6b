import type { Lift, LiftSet } from '@platewright/core/records/kinds.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { liftsView } from '@platewright/core/views/lifts.ts';
import { describe, expect, it } from 'vitest';
import { seasonOf } from '../support/season.ts';

const date = '2026-02-22';

function liftOf(change: Partial<Lift> = {}): Lift {
  return { id: 'squat', athlete: 'athlete-1', name: 'Squat', key: true, smallestStepKg: 2.5, ...change };
}

function setOf(on: string, loadKg: number, repetitions = 5, change: Partial<LiftSet> = {}): LiftSet {
  const id = `set-${on}-${loadKg}-${repetitions}`;
  return { id, athlete: 'athlete-1', date: on, lift: 'squat', loadKg, repetitions, ...change };
}

function squat(...liftSets: LiftSet[]) {
  const [lift] = liftsView(seasonOf({ lifts: [liftOf()], liftSets }), date).lifts;
  if (lift === undefined) throw new Error('no lift');
  return lift;
}

/** A set a week that gains a kilogram each time; the last one on `last`. */
function weeks(count: number, last = date): LiftSet[] {
  return Array.from({ length: count }, (_, n) => setOf(addDays(last, -7 * (count - 1 - n)), 100 + n));
}

describe('lifts view', () => {
  it('lists key lifts first, then by name, each with its own sets', () => {
    const lifts = [
      liftOf({ id: 'curl', name: 'Curl', key: false }),
      liftOf(),
      liftOf({ id: 'bench', name: 'Bench press' }),
    ];
    const liftSets = [setOf(date, 60, 8, { lift: 'bench' }), setOf(date, 20, 8, { lift: 'gone' })];
    const view = liftsView(seasonOf({ lifts, liftSets }), date);
    expect(view.lifts.map(({ id }) => id)).toEqual(['bench', 'squat', 'curl']);
    expect(view.lifts.map(({ sets }) => sets.length)).toEqual([1, 0, 0]);
  });

  it('shows sets up to the date, newest first', () => {
    const { sets } = squat(setOf('2026-02-01', 100), setOf('2026-02-23', 120), setOf(date, 105));
    expect(sets.map(({ loadKg }) => loadKg)).toEqual([105, 100]);
  });

  it('tells the rep max from the best set of the newest session, with its error', () => {
    const { repMax, trend } = squat(setOf('2026-02-01', 120), setOf(date, 100, 8), setOf(date, 110, 3));
    expect(trend).toBeNull();
    expect(repMax?.of).toMatchObject({ loadKg: 100, repetitions: 8 });
    // Mean of Epley 126.67 and Brzycki 124.14.
    expect(repMax?.kg.mean).toBeCloseTo(125.4, 1);
    expect(repMax?.kg.interval90.low).toBeLessThan(120);
    expect(squat(setOf(date, 100, 1)).repMax?.kg).toEqual({
      mean: 100,
      interval90: { low: 100, high: 100 },
    });
  });

  it('takes the end of the trend once there is one, which a bad session does not turn', () => {
    const spoilt = [...weeks(8, addDays(date, -7)), setOf(date, 60)];
    const { repMax, trend } = squat(...spoilt);
    expect(trend?.sessions).toBe(9);
    expect(repMax?.of.loadKg).toBe(60);
    expect(repMax?.kg.mean).toBeGreaterThan(115);
  });

  it('is as unsure as the trend where the newest set is a single', () => {
    const uneven = weeks(8, addDays(date, -7)).map((set, n) => ({
      ...set,
      loadKg: set.loadKg + 4 * (n % 2),
    }));
    const { repMax, trend } = squat(...uneven, setOf(date, 121, 1));
    expect(repMax?.of.repetitions).toBe(1);
    const end = trend?.line.at(-1)?.kg.interval90;
    expect((end?.high ?? 0) - (end?.low ?? 0)).toBeGreaterThan(2);
    expect(repMax?.kg.interval90.low).toBeCloseTo(end?.low ?? 0, 9);
    expect(repMax?.kg.interval90.high).toBeCloseTo(end?.high ?? 0, 9);
  });

  it('gives the trend of the last twelve weeks in % a month, with a line over it', () => {
    const { trend, points } = squat(...weeks(20));
    expect(trend?.sessions).toBe(12);
    // A kilogram a week on loads about 113.5 kg; 4.348 weeks a month.
    expect(trend?.percentPerMonth.mean).toBeCloseTo((4.348 * 100) / 113.5, 2);
    expect(trend?.line.map((point) => point.date)).toEqual(['2025-12-07', '2026-01-15', date]);
    expect(points).toHaveLength(20);
    expect(squat(...weeks(12, '2025-06-01'))).toMatchObject({ trend: null, points: [] });
  });

  it('sets the next mark from the newest session, by the smallest step of the lift', () => {
    expect(squat(setOf('2026-02-01', 120), setOf(date, 100, 8)).nextMark).toMatchObject({
      loadKg: 102.5,
      repetitions: 8,
    });
    expect(squat(setOf(date, 0, 8), setOf(date, 0, 12)).nextMark).toMatchObject({
      repetitions: 12,
      loadKg: 2.5,
    });
    expect(squat()).toMatchObject({ nextMark: null, repMax: null, trend: null, points: [], sets: [] });
  });

  it('tells no rep max from more than ten repetitions, but goes back to a set that tells one', () => {
    const { repMax, nextMark } = squat(setOf('2026-02-01', 100), setOf(date, 60, 15));
    expect(repMax?.of.date).toBe('2026-02-01');
    expect(nextMark).toMatchObject({ loadKg: 62.5, repetitions: 15 });
  });
});
