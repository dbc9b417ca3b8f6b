import { fitModel } from '@platewright/core/maintenance/model.ts';
import { describe, expect, it } from 'vitest';
import {
  growPlant,
  KCAL_PER_MJ,
  liveOneDay,
  maintenanceOf,
  massOf,
  PUBLISHED_SPREAD,
} from '../bench/virtual-athletes/plant.ts';

/** The check man of the adult model (Hall KD et al. Lancet 2011;378:826–837): 90 kg, 1.80 m, 30 years, activity level 1.6. */
function sixCleanWeeks(changeMj: number, told: boolean) {
  const fatKg = 0.9 * (0.14 * 30 + 37.31 * Math.log(90 / 1.8 ** 2) - 103.94);
  const { plant, body } = growPlant({
    massKg: 90,
    fatKg,
    restingMj: 1880 * 0.004184,
    activityLevel: 1.6,
    carbohydrateShare: 0.5,
    spread: PUBLISHED_SPREAD,
  });
  const energyMj = plant.habitualMj + changeMj;
  const kcal = energyMj * KCAL_PER_MJ;
  const grams = { proteinG: (0.2 * kcal) / 4, carbohydrateG: (0.5 * kcal) / 4, fatG: (0.3 * kcal) / 9 };
  const days = Array.from({ length: 42 }, (_, day) => {
    const weightKg = Math.round(10 * massOf(body)) / 10;
    liveOneDay(plant, body, { energyMj, carbohydrateMj: 0.5 * energyMj, sodiumMg: 0, shiftMj: 0 });
    const date = new Date(Date.UTC(2025, 0, 6) + day * 86_400_000).toISOString().slice(0, 10);
    return { day: date, weightKg, intake: { ...grams, complete: true }, prescribed: grams };
  });
  const person = { sex: 'male', ageYears: 30, heightCm: 180 } as const;
  const model = fitModel(told ? { ...person, fatPercent: (100 * fatKg) / 90 } : person, days, grams);
  return { found: model.maintenanceKcal.mean, truth: maintenanceOf(plant, body, 0) };
}

describe('maintenance on the published trajectory, after six clean weeks', () => {
  it.each([-2, -1, 0, 1])('is within 50 kcal at %d MJ a day, body fat measured or not', (changeMj) => {
    for (const told of [true, false]) {
      const { found, truth } = sixCleanWeeks(changeMj, told);
      expect(Math.abs(found - truth)).toBeLessThan(50);
    }
  });
});
