import { describe, expect, it } from 'vitest';
import {
  type Body,
  energyForPace,
  expenditureOf,
  growPlant,
  KCAL_PER_MJ,
  liveOneDay,
  maintenanceOf,
  massOf,
  PUBLISHED_SPREAD,
  paceAt,
} from '../bench/virtual-athletes/plant.ts';

// Hall KD et al. Lancet 2011;378:826–837 and web-appendix. The trajectories are computed from the published
// equations by Euler steps of 0.01 d; they are not printed in the paper.
const STEPS = 100;
// Mifflin–St Jeor, Am J Clin Nutr 1990;51:241–247: 90 kg, 180 cm, 30 y man → 1,880 kcal.
const RESTING_MJ = (1880 * 4.184) / 1000;

function man(massKg = 90, ageYears = 30, activityLevel = 1.6) {
  const restingMj = ((10 * massKg + 6.25 * 180 - 5 * ageYears + 5) * 4.184) / 1000;
  // Jackson AS et al. Int J Obes 2002;26:789–796, men.
  const fatKg = (massKg / 100) * (0.14 * ageYears + 37.31 * Math.log(massKg / 1.8 ** 2) - 103.94);
  return growPlant({
    massKg,
    fatKg,
    restingMj,
    activityLevel,
    carbohydrateShare: 0.5,
    spread: PUBLISHED_SPREAD,
  });
}

function run(changeMj: number, days: readonly number[], start = man()) {
  const { plant } = start;
  const body: Body = { ...start.body };
  const energyMj = plant.habitualMj + changeMj;
  const food = { energyMj, carbohydrateMj: 0.5 * energyMj, sodiumMg: 0, shiftMj: 0 };
  const masses: number[] = [];
  for (let day = 1; day <= Math.max(...days); day++) {
    liveOneDay(plant, body, food, STEPS);
    if (days.includes(day)) masses.push(massOf(body));
  }
  return { masses, body, plant, food };
}

describe('the adult dynamic model', () => {
  it('starts from the constants of the check man', () => {
    const { plant, body } = man();
    expect(RESTING_MJ).toBeCloseTo(7.8659, 4);
    expect(plant.activityMjPerKg).toBeCloseTo(0.0385, 4);
    expect(plant.habitualMj).toBeCloseTo(12.5855, 4);
    expect(plant.fixedMj).toBeCloseTo(4.6873, 3);
    expect(plant.glycogenLoss).toBeCloseTo(25.171, 3);
    expect(body.fatKg).toBeCloseTo(21.8585, 3);
    expect(body.leanKg).toBeCloseTo(45.1415, 3);
    expect(massOf(body)).toBeCloseTo(90, 9);
  });

  it('loses along the check trajectory at −2 MJ/d', () => {
    const days = [1, 3, 7, 14, 28, 90, 180, 365, 730];
    const check = [89.716, 89.499, 89.259, 88.885, 88.187, 85.461, 82.182, 77.45, 73.191];
    const { masses } = run(-2, days);
    for (const [index, mass] of masses.entries()) expect(mass).toBeCloseTo(check[index] ?? 0, 2);
    const year = run(-2, [365]);
    expect(year.body.fatKg).toBeCloseTo(14.177, 2);
    expect(expenditureOf(year.plant, year.body, year.food)).toBeCloseTo(11.092, 2);
  });

  it('gains along the check trajectory at +1 MJ/d', () => {
    const { masses } = run(1, [1, 7, 28, 90, 365]);
    const check = [90.141, 90.366, 90.897, 92.226, 96.101];
    for (const [index, mass] of masses.entries()) expect(mass).toBeCloseTo(check[index] ?? 0, 2);
    expect(run(1, [365]).body.fatKg).toBeCloseTo(25.983, 2);
  });

  it('follows the rule of thumb: 100 kJ/d for about a kilogram', () => {
    const years = [365, 1095, 3650];
    for (const [index, mass] of run(-0.1, years).masses.entries())
      expect(mass - 90).toBeCloseTo([-0.615, -0.937, -0.994][index] ?? 0, 2);
    for (const [index, mass] of run(-0.1, years, man(100, 40, 1.5)).masses.entries())
      expect(mass - 100).toBeCloseTo([-0.639, -1.092, -1.234][index] ?? 0, 2);
  }, 30_000);

  // The steady shift 3.7·Ginit·(√ratio − 1) + (ξCI/ξNa)·(ratio − 1) of equations 1 and 2.
  it.each([
    [0.75, -0.581],
    [0.9, -0.228],
    [1.1, 0.224],
    [1.25, 0.552],
    [1.5, 1.082],
  ])('moves water after a step of carbohydrate to %d of the habitual', (ratio, shiftKg) => {
    const { plant, body } = man();
    const tissue = body.fatKg + body.leanKg;
    const carbohydrateMj = ratio * plant.habitualCarbohydrateMj;
    for (let day = 0; day < 14; day++)
      liveOneDay(plant, body, { energyMj: plant.habitualMj, carbohydrateMj, sodiumMg: 0, shiftMj: 0 }, STEPS);
    const waterKg = massOf(body) - 90 - (body.fatKg + body.leanKg - tissue);
    expect(waterKg).toBeCloseTo(shiftKg, 2);
  });

  it('holds a third of a litre for each gram of sodium a day', () => {
    const { plant, body } = man();
    const food = {
      energyMj: plant.habitualMj,
      carbohydrateMj: plant.habitualCarbohydrateMj,
      sodiumMg: 1000,
      shiftMj: 0,
    };
    for (let day = 0; day < 14; day++) liveOneDay(plant, body, food, STEPS);
    expect(body.extracellularKg - plant.extracellularStartKg).toBeCloseTo(0.333, 3);
  });

  it('stands still at maintenance and answers a pace with the energy for it', () => {
    const { plant, body } = man();
    expect(maintenanceOf(plant, body, 0)).toBeCloseTo(plant.habitualMj * KCAL_PER_MJ, 6);
    for (const pace of [-0.7, 0, 0.35])
      expect(paceAt(plant, body, energyForPace(plant, body, pace, 0), 0)).toBeCloseTo(pace, 9);
  });
});
