import { describe, expect, it } from 'vitest';
import { baselines } from '../bench/virtual-athletes/baselines.ts';
import { closedLoop } from '../bench/virtual-athletes/closed-loop.ts';
import { athlete, population } from '../bench/virtual-athletes/population.ts';
import type { Controller, Run } from '../bench/virtual-athletes/run-types.ts';
import { scenarios } from '../bench/virtual-athletes/scenarios.ts';
import { addTally, nothingTallied, rowOf, tallyRun, tissuePace } from '../bench/virtual-athletes/score.ts';
import { worlds } from '../bench/virtual-athletes/variants.ts';

const aim = { phase: 'off-season', pacePercentPerWeek: 0.35, band: { low: 0.2, high: 0.5 } } as const;

function usual() {
  const world = worlds.usual;
  const scenario = scenarios.find(({ name }) => name === 'gain clean');
  if (!world || !scenario) throw new Error('no usual world');
  return { world, scenario };
}

function named(name: string): Controller {
  const controller = baselines[name];
  if (!controller) throw new Error(`no controller ${name}`);
  return controller;
}

/** Gains 0.35 % a week with marks changed as told, one a week. */
function madeRun(changes: readonly number[], pacePercent: number): Run {
  const perDay = (80 * pacePercent) / 700;
  let mark = 300;
  return {
    startTissueKg: 50,
    days: Array.from({ length: 7 * (changes.length + 1) }, (_, day) => ({
      tissueKg: 50 + perDay * (day + 1),
      fatKg: 10,
      massKg: 80,
      dosePace: pacePercent,
      aim,
    })),
    calls: changes.map((change, week) => {
      const markBeforeG = mark;
      mark += change;
      return {
        day: 7 * week + 6,
        answer: { verdict: 'hold', carbohydrateG: mark },
        markBeforeG,
        markAfterG: mark,
        maintenanceKcal: 2800,
        expectedPace: pacePercent,
        aim,
      };
    }),
  };
}

function judge(run: Run) {
  const tally = nothingTallied();
  tallyRun(tally, run);
  return rowOf(tally);
}

describe('virtual athletes', () => {
  it('are the same for the same seed, one by one or in a crowd, and others for another', () => {
    const { world } = usual();
    expect(population(3, 5, world)[2]).toEqual(athlete(2, 5, world));
    expect(athlete(2, 6, world).profile).not.toEqual(athlete(2, 5, world).profile);
  });

  it('live the same life whoever makes the call', () => {
    const { world, scenario } = usual();
    const someone = athlete(0, 1, world);
    const first = closedLoop(someone, scenario, world, named('nothing'));
    expect(closedLoop(someone, scenario, world, named('nothing'))).toEqual(first);
    const other = closedLoop(someone, scenario, world, named('oracle'));
    expect(other.days.slice(0, 7)).toEqual(first.days.slice(0, 7));
    expect(other.days.at(-1)?.tissueKg).not.toBe(first.days.at(-1)?.tissueKg);
  });

  it('are told nothing of days to come', () => {
    for (const world of Object.values(worlds)) {
      const { scenario } = usual();
      closedLoop(athlete(1, 1, world), scenario, world, (input) => {
        const today = input.days.at(-1)?.day ?? '';
        const stated = [...input.waist, ...input.keyLifts, ...input.calls].map(({ day }) => day);
        for (const day of stated) expect(day <= today).toBe(true);
        expect(input.days.map(({ day }) => day)).toEqual(input.days.map(({ day }) => day).toSorted());
        return { verdict: 'not-enough', carbohydrateG: Number.NaN };
      });
    }
  });
});

describe('the judge', () => {
  it('sees the pace of tissue over the last fourteen days', () => {
    expect(tissuePace(madeRun([0, 0, 0], 0.35), 27)).toBeCloseTo(0.35, 9);
  });

  it('counts changes, reversals and changes made while in band', () => {
    expect(judge(madeRun([25, 0, -25, -10, 0, 5], 0.35))).toMatchObject({
      inBand: 100,
      doses: 100,
      changes: 4,
      reversals: 2,
      changesInBand: 4,
    });
    expect(judge(madeRun([25, 25], 0.6))).toMatchObject({
      inBand: 0,
      doses: 0,
      reversals: 0,
      changesInBand: 0,
    });
  });

  it('adds parts to the same sum', () => {
    const runs = [madeRun([25, -25], 0.35), madeRun([0, 10], 0.6)];
    const whole = nothingTallied();
    const sum = nothingTallied();
    for (const run of runs) {
      tallyRun(whole, run);
      const part = nothingTallied();
      tallyRun(part, run);
      addTally(sum, part);
    }
    expect(sum).toEqual(whole);
  });

  it('finds the oracle far ahead of simple rules', () => {
    const { world, scenario } = usual();
    const rows = ['week against week ±25 g', 'oracle'].map((name) => {
      const tally = nothingTallied();
      for (const someone of population(60, 3, world))
        tallyRun(tally, closedLoop(someone, scenario, world, named(name)));
      return rowOf(tally);
    });
    expect(rows[1]?.inBand).toBeGreaterThan((rows[0]?.inBand ?? 100) + 25);
  });
});
