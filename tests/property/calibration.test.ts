import { doseFrom } from '@platewright/core/call/dose.ts';
import { forecastAt } from '@platewright/core/call/forecast.ts';
import { fitModel } from '@platewright/core/maintenance/model.ts';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../bench/virtual-athletes/random.ts';

/**
 * Simulation-based calibration (Talts S et al. 2018, arXiv:1804.06788), in its simplest form: worlds drawn from the model's own
 * prior, and the rank of the truth in the model's interval must be even. The simulator here is a few lines, not the bench.
 */
describe('intervals', () => {
  it('hold the truth as often as they say', () => {
    const person = { sex: 'male', ageYears: 30, heightCm: 180, fatPercent: 15 } as const;
    const plan = { proteinG: 220, carbohydrateG: 400, fatG: 80 };
    const planKcal = 3200;
    const runs = 240;
    let maintenanceIn90 = 0;
    let maintenanceIn50 = 0;
    let paceIn90 = 0;
    let aheadIn90 = 0;
    for (let run = 0; run < runs; run++) {
      const random = seededRandom(run, 5);
      const density = Math.max(0.6, 1 + 0.03 + 0.14 * random.normal());
      let base = 2900 * (1 + 0.14 * random.normal());
      let adapt = 0;
      let tissue = 85;
      let water = 0;
      const own = Math.exp(0.3 * random.normal());
      const tissues: number[] = [];
      const live = (logged: number) => {
        const maintenance = base + adapt + 27 * (tissue - 85);
        const eaten = logged * (1 + 0.05 * random.normal());
        tissue += (density / 7200) * (eaten - maintenance);
        adapt += ((0.14 / 0.9) * (eaten - base) - adapt) / 14;
        base += 6 * random.normal() + (random.chance(1 / 180) ? 210 * random.normal() : 0);
      };
      const days = Array.from({ length: 70 }, (_, day) => {
        tissues.push(tissue);
        water = 0.6 * water + 0.8 * 0.4 * own * random.normal();
        const weightKg = Math.round(10 * (tissue + water + 0.4 * own * random.normal())) / 10;
        const logged = planKcal * (1 + 0.05 * random.normal());
        live(logged);
        const carbohydrateG = plan.carbohydrateG + (logged - planKcal) / 4;
        const date = new Date(Date.UTC(2025, 0, 6) + day * 86_400_000).toISOString().slice(0, 10);
        return { day: date, weightKg, intake: { ...plan, carbohydrateG, complete: true }, prescribed: plan };
      });
      const model = fitModel(person, days, plan);
      const truth = base + adapt + 27 * (tissue - 85);
      const z = Math.abs(truth - model.maintenanceKcal.mean) / model.maintenanceKcal.sd;
      if (z < 1.645) maintenanceIn90++;
      if (z < 0.674) maintenanceIn50++;
      const pace = model.paceKgPerWeek(14);
      const truePace = (tissue - (tissues[56] ?? tissue)) / 2;
      if (Math.abs(truePace - pace.mean) < 1.645 * pace.sd) paceIn90++;
      // Four weeks ahead on the same mark, eaten as before: the water of carbohydrate stays as it is.
      const habit = { mean: model.eating.habit, sd: model.eating.habitSd };
      const targets = { ...plan, fatFloorG: 60, carbohydrateBand: { lowG: 330, highG: 440 } };
      const { points } = forecastAt(model, doseFrom(model, targets, habit), habit, plan.carbohydrateG);
      const waterKg = (points[1]?.massKg.mean ?? 0) - model.tissueKg.mean;
      // The first morning ahead is the one after the last day.
      for (let day = 0; day < 27; day++) live(planKcal * (1 + 0.05 * random.normal()));
      const ahead = points[28]?.massKg.interval90 ?? { low: Number.NaN, high: Number.NaN };
      if (tissue + waterKg > ahead.low && tissue + waterKg < ahead.high) aheadIn90++;
    }
    for (const share of [maintenanceIn90 / runs, paceIn90 / runs, aheadIn90 / runs]) {
      expect(share).toBeGreaterThan(0.85);
      expect(share).toBeLessThan(0.97);
    }
    expect(maintenanceIn50 / runs).toBeGreaterThan(0.38);
    expect(maintenanceIn50 / runs).toBeLessThan(0.64);
  });

  it.each([0.5, 1, 2])('rest on noise that is found, at %d times the usual', (own) => {
    const person = { sex: 'male', ageYears: 30, heightCm: 180, fatPercent: 15 } as const;
    const plan = { proteinG: 220, carbohydrateG: 400, fatG: 80 };
    const runs = 30;
    let found = 0;
    for (let run = 0; run < runs; run++) {
      const random = seededRandom(run, 77);
      let water = 0;
      const days = Array.from({ length: 63 }, (_, day) => {
        water = 0.6 * water + 0.8 * 0.4 * own * random.normal();
        const weightKg = Math.round(10 * (85 + water + 0.4 * own * random.normal())) / 10;
        const date = new Date(Date.UTC(2025, 0, 6) + day * 86_400_000).toISOString().slice(0, 10);
        return { day: date, weightKg, intake: { ...plan, complete: true }, prescribed: plan };
      });
      const { noise } = fitModel(person, days, plan);
      found += Math.hypot(noise.scaleSd, noise.waterSd) / Math.hypot(0.4 * own, 0.4 * own) / runs;
    }
    expect(found).toBeGreaterThan(0.8);
    expect(found).toBeLessThan(1.2);
  });
});
