import { decide } from '@platewright/core/call/decide.ts';
import { type Dose, doseFrom } from '@platewright/core/call/dose.ts';
import { fitDays } from '@platewright/core/call/fit.ts';
import type { Guards } from '@platewright/core/call/guards.ts';
import { assess } from '@platewright/core/call/situation.ts';
import { normalBelow } from '@platewright/core/trend/normal.ts';
import { describe, expect, it } from 'vitest';
import { callOfLife } from '../support/call-input.ts';

const guards: Guards = {
  fatFreeKg: 70,
  availability: 45,
  availabilityFloorG: 100,
  floorG: 100,
  ceilingG: 800,
  stepG: 300,
  aim: 0.35,
  band: { low: 0.2, high: 0.5 },
};
const neverMoved = { daysSinceMove: Number.POSITIVE_INFINITY, lastDirection: 0, lastWeek: 0.35 };

/** A dose for a body that is in one of two places: each needs another mark, g, for the aim; 0.01 % a week for each 2 g. */
function eitherOr(first: { weight: number; markG: number }, second: { weight: number; markG: number }): Dose {
  const cases = [first, second];
  const pace = (needs: number, markG: number) => 0.35 + (markG - needs) / 200;
  const middleG = cases.reduce((sum, { weight, markG }) => sum + weight * markG, 0);
  return {
    paceAt: (markG) => ({ mean: pace(middleG, markG), sd: 0.2 }),
    energyAt: (markG) => 2000 + 4 * markG,
    markFor: () => middleG,
    chancesAt(markG, { low, high }, lastWeek) {
      const mean = (needs: number) =>
        lastWeek === undefined ? pace(needs, markG) : (lastWeek + pace(needs, markG)) / 2;
      const under = (end: number) =>
        cases.reduce((sum, c) => sum + c.weight * normalBelow((end - mean(c.markG)) / 0.05), 0);
      return { below: under(low), inside: under(high) - under(low), above: 1 - under(high) };
    },
  };
}

describe('which mark', () => {
  it('is the aim when maintenance lies in one place', () => {
    const dose = eitherOr({ weight: 1, markG: 400 }, { weight: 0, markG: 400 });
    expect(decide(330, dose, guards, neverMoved)).toMatchObject({ markG: 400, reason: 'worth-it' });
  });

  it('is one of two places where maintenance may lie, not the middle that serves neither', () => {
    const dose = eitherOr({ weight: 0.55, markG: 400 }, { weight: 0.45, markG: 310 });
    const { markG } = decide(200, dose, guards, neverMoved);
    expect(dose.chancesAt(360, guards.band).inside).toBeLessThan(0.2);
    expect(dose.chancesAt(markG, guards.band).inside).toBeGreaterThan(0.5);
  });

  it('does not move from a place that may still be right to the middle', () => {
    const dose = eitherOr({ weight: 0.5, markG: 400 }, { weight: 0.5, markG: 310 });
    expect(decide(400, dose, guards, neverMoved)).toMatchObject({ markG: 400 });
  });

  it('makes up a little for a week that ran too fast, and stays near the aim', () => {
    const dose = eitherOr({ weight: 1, markG: 400 }, { weight: 0, markG: 400 });
    const { markG } = decide(330, dose, guards, { ...neverMoved, lastWeek: 0.8 });
    expect(markG).toBeLessThan(400);
    expect(dose.chancesAt(markG, guards.band).inside).toBeGreaterThan(0.8);
  });

  it('stays within guards and the largest step', () => {
    const dose = eitherOr({ weight: 0.5, markG: 90 }, { weight: 0.5, markG: 130 });
    expect(decide(300, dose, guards, neverMoved).markG).toBeGreaterThanOrEqual(guards.floorG);
    expect(decide(300, dose, { ...guards, stepG: 60 }, neverMoved).markG).toBe(240);
  });
});

describe('chances at a mark', () => {
  it('make up one whole and move one way with the mark', () => {
    const input = callOfLife({ days: 56, kgPerWeek: 0.3 });
    const model = fitDays(input);
    if (model === null) throw new Error('there are weigh-ins');
    const dose = doseFrom(model, input.targets, assess(input, model).habit);
    const chances = [200, 300, 400, 500].map((markG) => dose.chancesAt(markG, guards.band));
    for (const { below, inside, above } of chances) expect(below + inside + above).toBeCloseTo(1, 12);
    for (const [i, { below, above }] of chances.entries()) {
      expect(below).toBeLessThanOrEqual(chances[i - 1]?.below ?? 1);
      expect(above).toBeGreaterThanOrEqual(chances[i - 1]?.above ?? 0);
    }
    expect(dose.paceAt(dose.markFor(0.35)).mean).toBeCloseTo(0.35, 9);
  });
});
