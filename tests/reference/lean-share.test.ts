import { energyBalance } from '@platewright/core/body/energy-balance.ts';
import { leanShare } from '@platewright/core/body/lean-share.ts';
import { waistChange } from '@platewright/core/body/waist.ts';
import { kgPerSurplusKcal, leanShareOfChange } from '@platewright/core/maintenance/energy-density.ts';
import { keepPerKg } from '@platewright/core/maintenance/open-filter.ts';
import { waistCmPerFatKg } from '@platewright/core/maintenance/tape.ts';
import { describe, expect, it } from 'vitest';
import { closedLoop } from '../bench/virtual-athletes/closed-loop.ts';
import { population } from '../bench/virtual-athletes/population.ts';
import { seededRandom } from '../bench/virtual-athletes/random.ts';
import { scenarios } from '../bench/virtual-athletes/scenarios.ts';
import { worlds } from '../bench/virtual-athletes/variants.ts';

const bare = { weeks: 12, energyKcal: null, waistCm: null };

describe('lean share', () => {
  // Forbes curve 10.4/(10.4 + F), Forbes GB 2000; the shares of method.md's table.
  it.each([
    [8, 0.5652],
    [10, 0.5098],
    [15, 0.4094],
    [20, 0.3421],
  ])('with %d kg of fat and weights alone is the Forbes curve', (fatKg, share) => {
    const found = leanShare({ ...bare, fatKg, tissueKg: { mean: 4, sd: 0.2 } });
    expect(found.share?.mean).toBeCloseTo(share, 4);
    expect(found.leanKg.mean + found.fatKg.mean).toBeCloseTo(4, 9);
  });

  it('is null when the change cannot be told from none', () => {
    expect(leanShare({ ...bare, fatKg: 10, tissueKg: { mean: 0.2, sd: 0.2 } }).share).toBeNull();
  });

  it('falls when the waist grew more than the fat of the usual split', () => {
    const tissueKg = { mean: 3, sd: 0.2 };
    const usual = leanShare({ ...bare, fatKg: 10, tissueKg });
    const waist = leanShare({ ...bare, fatKg: 10, tissueKg, waistCm: { mean: 4, sd: 0.5 } });
    expect(waist.share?.mean).toBeLessThan((usual.share?.mean ?? 0) - 0.05);
    expect(waist.fatKg.interval90.low).toBeGreaterThan(usual.fatKg.interval90.low);
  });

  it('rises when less energy went in than the usual split would hold', () => {
    const tissueKg = { mean: 3, sd: 0.2 };
    const usual = leanShare({ ...bare, fatKg: 10, tissueKg });
    const energy = leanShare({ ...bare, fatKg: 10, tissueKg, energyKcal: { mean: 9000, sd: 3000 } });
    expect(energy.share?.mean).toBeGreaterThan((usual.share?.mean ?? 0) + 0.05);
  });

  it('stays at the usual split when just that energy was eaten: handling, turnover and upkeep of the new mass included', () => {
    const fatKg = 12;
    const eaten = 4 / kgPerSurplusKcal(fatKg) + (84 * keepPerKg * 4) / 2;
    const tissueKg = { mean: 4, sd: 0.2 };
    const found = leanShare({ ...bare, fatKg, tissueKg, energyKcal: { mean: eaten, sd: 1500 } });
    expect(found.share?.mean).toBeCloseTo(leanShareOfChange(fatKg), 3);
  });

  it('says when lean was lost while body mass rose', () => {
    const found = leanShare({
      ...bare,
      fatKg: 10,
      tissueKg: { mean: 2, sd: 0.1 },
      energyKcal: { mean: 30_000, sd: 300 },
      waistCm: { mean: 3.5, sd: 0.3 },
    });
    expect(found.leanKg.mean).toBeLessThan(0);
    expect(found.share?.mean).toBe(0);
  });

  it.each(['usual', 'muscular', 'thrifty'])('has intervals that hold the truth in the world “%s”', (name) => {
    const world = worlds[name];
    const courses = scenarios.filter((one) => one.name === 'gain clean' || one.name === 'loss clean');
    if (!world || courses.length !== 2) throw new Error('no such world');
    let held = 0;
    let told = 0;
    for (const athlete of population(150, 7, world))
      for (const course of courses) {
        const run = closedLoop(athlete, course, world, (input, truth) => ({
          verdict: 'hold',
          carbohydrateG: Math.max(0, truth.markForPace(input.aim.pacePercentPerWeek)),
        }));
        const end = run.days[83];
        if (!end) continue;
        const noise = seededRandom(athlete.seed, athlete.number, 71);
        const fatGained = end.fatKg - athlete.start.fatKg;
        const tissue = end.tissueKg - run.startTissueKg;
        const perKg = waistCmPerFatKg.mean + 0.2 * noise.normal();
        const found = leanShare({
          weeks: 12,
          fatKg: athlete.start.fatKg * (1 + 0.15 * noise.normal()),
          tissueKg: { mean: tissue + 0.3 * noise.normal(), sd: 0.3 },
          energyKcal: null,
          waistCm: { mean: perKg * fatGained + 0.8 * noise.normal(), sd: 0.8 },
        });
        const lean = tissue - fatGained;
        told++;
        if (lean >= found.leanKg.interval90.low && lean <= found.leanKg.interval90.high) held++;
      }
    expect(held / told).toBeGreaterThan(0.85);
    expect(held / told).toBeLessThan(0.995);
  });
});

describe('energy balance', () => {
  it('is days times the difference, missing days taken as the others', () => {
    const logged = [3000, null, 3000, 3000];
    expect(energyBalance(logged, { mean: 2700, sd: 80 })?.mean).toBeCloseTo(1200, 9);
    expect(energyBalance(logged, { mean: 2700, sd: 80 })?.sd).toBeGreaterThan(320);
  });

  it('is unknown when half of the days are not logged', () => {
    expect(energyBalance([3000, null, null], { mean: 2700, sd: 80 })).toBeNull();
    expect(energyBalance([], { mean: 2700, sd: 80 })).toBeNull();
  });
});

describe('change of the waist', () => {
  const straight = [0, 7, 14, 21, 28].map((day) => ({ day, cm: 84 + day / 14 }));

  it('is the line between the readings, and a misread tape does not turn it', () => {
    expect(waistChange(straight, 0, 28)?.mean).toBeCloseTo(2, 9);
    const misread = straight.map((reading) => (reading.day === 21 ? { day: 21, cm: 58 } : reading));
    const change = waistChange(misread, 0, 28);
    expect(Math.abs((change?.mean ?? 9) - 2)).toBeLessThan(2);
  });

  it('waits for three readings in two weeks', () => {
    expect(waistChange(straight.slice(0, 2), 0, 28)).toBeNull();
    expect(waistChange(straight, 0, 13)).toBeNull();
  });
});
