import { feedStores, restingStores, storedKg } from '@platewright/core/maintenance/carbohydrate-water.ts';
import {
  fatAfter,
  fatKcalPerKg,
  leanKcalPerKg,
  leanShareOfChange,
  tissueKcalPerKg,
} from '@platewright/core/maintenance/energy-density.ts';
import { fitModel } from '@platewright/core/maintenance/model.ts';
import { cunninghamKcal, mifflinStJeorKcal } from '@platewright/core/maintenance/start-estimate.ts';
import { describe, expect, it } from 'vitest';
import {
  growPlant,
  KCAL_PER_MJ,
  liveOneDay,
  maintenanceOf,
  massOf,
  PUBLISHED_SPREAD,
} from '../bench/virtual-athletes/plant.ts';

describe('energy of a change of tissue', () => {
  it('has the densities of fat and lean tissue, Hall et al. 2011', () => {
    expect(fatKcalPerKg).toBeCloseTo(9440.7, 1);
    expect(leanKcalPerKg).toBeCloseTo(1816.4, 1);
  });

  // Forbes curve with these densities, Hall 2008: fat mass, fat-free share, kcal/kg.
  it.each([
    [8, 0.5652, 5131],
    [15, 0.4094, 6319],
    [25, 0.2938, 7201],
    [40, 0.2063, 7867],
  ])('follows the Forbes curve at %d kg of fat', (fat, share, kcal) => {
    expect(leanShareOfChange(fat)).toBeCloseTo(share, 4);
    expect(Math.round(tissueKcalPerKg(fat))).toBe(kcal);
  });

  it('moves along FFM = 10.4 ln FM for large changes', () => {
    const after = fatAfter(20, -10);
    expect(after - 20 + 10.4 * Math.log(after / 20)).toBeCloseTo(-10, 6);
  });
});

describe('start estimate', () => {
  it('has the published resting energies', () => {
    expect(mifflinStJeorKcal({ sex: 'male', ageYears: 30, heightCm: 180 }, 90)).toBe(1880);
    expect(mifflinStJeorKcal({ sex: 'female', ageYears: 30, heightCm: 165 }, 65)).toBe(1370.25);
    expect(cunninghamKcal(70)).toBe(2040);
  });
});

describe('water of a carbohydrate step, Hall et al. 2011 equations 1 and 2', () => {
  it.each([
    [0.75, -0.581],
    [0.9, -0.228],
    [1.1, 0.224],
    [1.25, 0.552],
    [1.5, 1.082],
  ])('comes to rest at the printed mass for %d times the carbohydrate', (ratio, kg) => {
    const stores = restingStores(400);
    for (let day = 0; day < 90; day++) feedStores(stores, 400 * ratio, 0);
    expect(storedKg(stores)).toBeCloseTo(kg, 3);
  });

  // Equation 1 by Euler steps so small that they stand for the exact solution, on the first and on the seventh day.
  it.each([
    [400, 0],
    [400, 0.5],
    [400, 1.5],
    [300, 4],
    [3000, 3],
  ])('solves the equation of glycogen from %d g at %d times the carbohydrate', (habitualG, ratio) => {
    const stores = restingStores(habitualG);
    const loss = (4 * habitualG) / 0.25;
    let glycogenKg = 0.5;
    for (let day = 0; day < 7; day++) {
      feedStores(stores, habitualG * ratio, 0);
      for (let step = 0; step < 20_000; step++)
        glycogenKg += (4 * habitualG * ratio - loss * glycogenKg ** 2) / (17_600 / 4.184) / 20_000;
      expect(stores.glycogenKg).toBeCloseTo(glycogenKg, 3);
    }
  });

  it('is nearly complete in five days', () => {
    const stores = restingStores(375);
    for (let day = 0; day < 5; day++) feedStores(stores, 375 * 1.25, 0);
    expect(storedKg(stores)).toBeGreaterThan(0.95 * 0.552);
  });

  it('holds a third of a litre for a gram of sodium', () => {
    const stores = restingStores(400);
    for (let day = 0; day < 20; day++) feedStores(stores, 400, 1000);
    expect(storedKg(stores)).toBeCloseTo(0.333, 3);
  });
});

/** The reference trajectory of the adult model: man, 90 kg, 1.80 m, 30 years, activity level 1.6, half the energy as carbohydrate. */
describe('maintenance on the published model', () => {
  it.each([-2, 1])('is within 50 kcal after six clean weeks at %d MJ a day', (change) => {
    const { plant, body } = growPlant({
      massKg: 90,
      fatKg: 21.8585,
      restingMj: 1880 * 0.004184,
      activityLevel: 1.6,
      carbohydrateShare: 0.5,
      spread: PUBLISHED_SPREAD,
    });
    const energyMj = plant.habitualMj + change;
    const carbohydrateMj = energyMj / 2;
    const kcal = energyMj * KCAL_PER_MJ;
    const carbohydrateG = kcal / 8;
    const food = { proteinG: 200, carbohydrateG, fatG: (kcal / 2 - 800) / 9 };
    const days = Array.from({ length: 42 }, (_, day) => {
      const weightKg = Math.round(massOf(body) * 10) / 10;
      liveOneDay(plant, body, { energyMj, carbohydrateMj, sodiumMg: 0, shiftMj: 0 });
      const date = new Date(Date.UTC(2025, 0, 6) + day * 86_400_000).toISOString().slice(0, 10);
      return { day: date, weightKg, intake: { ...food, complete: true }, prescribed: food };
    });
    const person = { sex: 'male', ageYears: 30, heightCm: 180, fatPercent: 24.3 } as const;
    const { maintenanceKcal } = fitModel(person, days, food);
    const truth = maintenanceOf(plant, body, 0);
    expect(Math.abs(maintenanceKcal.mean - truth)).toBeLessThan(50);
    expect(Math.abs(truth - maintenanceKcal.mean)).toBeLessThan(1.645 * maintenanceKcal.sd);
  });
});
