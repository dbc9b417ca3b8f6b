import { type EnergyFactors, energyKcal, lowestSpecificFactors } from '@platewright/core/foods/atwater.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { describe, expect, it } from 'vitest';

/** NDB number, food, protein g, total carbohydrate g, fat g and published kcal, all per 100 g. */
type Published = readonly [
  ndb: string,
  food: string,
  protein: number,
  carbohydrate: number,
  fat: number,
  kcal: number,
];

/** kcal/g by the documentation of SR28; none of the foods below has any. */
const alcohol = 6.93;

/**
 * Specific Atwater factors in kcal/g (Merrill & Watt 1973, USDA Agriculture Handbook 74, table 13) and figures, both as
 * stored in the USDA National Nutrient Database for Standard Reference, Release 28.
 */
const kinds: readonly { kind: string; factors: EnergyFactors; foods: readonly Published[] }[] = [
  {
    kind: 'meat and fish',
    factors: { protein: 4.27, carbohydrate: 3.87, fat: 9.02, alcohol },
    foods: [
      ['05062', 'chicken breast, raw', 22.5, 0, 2.62, 120],
      ['05064', 'chicken breast, roasted', 31.02, 0, 3.57, 165],
      ['23557', 'ground beef 95/5, raw', 21.41, 0, 5, 137],
      ['23558', 'ground beef 95/5, cooked', 26.29, 0, 6.8, 174],
      ['13454', 'sirloin steak, lean, broiled', 30.55, 0, 5.79, 183],
      ['10061', 'pork tenderloin, roasted', 26.17, 0, 3.51, 143],
      ['17014', 'leg of lamb, lean, roasted', 28.3, 0, 7.74, 191],
      ['15236', 'salmon, farmed, raw', 20.42, 0, 13.42, 208],
      ['15237', 'salmon, farmed, baked', 22.1, 0, 12.35, 206],
      ['15016', 'cod, baked', 22.83, 0, 0.86, 105],
    ],
  },
  {
    kind: 'shellfish',
    factors: { protein: 4.27, carbohydrate: 4.11, fat: 9.02, alcohol },
    foods: [['15151', 'shrimp, cooked', 22.78, 1.52, 1.7, 119]],
  },
  {
    kind: 'eggs',
    factors: { protein: 4.36, carbohydrate: 3.68, fat: 9.02, alcohol },
    foods: [
      ['01123', 'egg, whole', 12.56, 0.72, 9.51, 143],
      ['01124', 'egg white', 10.9, 0.73, 0.17, 52],
      ['01125', 'egg yolk', 15.86, 3.59, 26.54, 322],
    ],
  },
  {
    kind: 'milk',
    factors: { protein: 4.27, carbohydrate: 3.87, fat: 8.79, alcohol },
    foods: [
      ['01077', 'milk, whole', 3.15, 4.8, 3.25, 61],
      ['01085', 'milk, skim', 3.37, 4.96, 0.08, 34],
      ['01016', 'cottage cheese, 1 %', 12.39, 2.72, 1.02, 72],
      ['01117', 'yogurt, plain, low-fat', 5.25, 7.04, 1.55, 63],
    ],
  },
  {
    kind: 'oats',
    factors: { protein: 3.46, carbohydrate: 4.12, fat: 8.37, alcohol },
    foods: [
      ['20038', 'oats, grain', 16.89, 66.27, 6.9, 389],
      ['08120', 'oats, rolled', 13.15, 67.7, 6.52, 379],
    ],
  },
  {
    kind: 'brown rice',
    factors: { protein: 3.41, carbohydrate: 4.12, fat: 8.37, alcohol },
    foods: [['20036', 'brown rice, dry', 7.54, 76.25, 3.2, 367]],
  },
  {
    kind: 'white rice',
    factors: { protein: 3.82, carbohydrate: 4.16, fat: 8.37, alcohol },
    foods: [['20444', 'white rice, dry', 7.13, 79.95, 0.66, 365]],
  },
  {
    kind: 'pasta',
    factors: { protein: 3.91, carbohydrate: 4.12, fat: 8.37, alcohol },
    foods: [['20120', 'pasta, dry', 13.04, 74.67, 1.51, 371]],
  },
  {
    kind: 'white flour and couscous',
    factors: { protein: 4.05, carbohydrate: 4.12, fat: 8.37, alcohol },
    foods: [
      ['20481', 'wheat flour, white', 10.33, 76.31, 0.98, 364],
      ['20028', 'couscous, dry', 12.76, 77.43, 0.64, 376],
    ],
  },
  {
    kind: 'pearl barley',
    factors: { protein: 3.55, carbohydrate: 3.95, fat: 8.37, alcohol },
    foods: [['20005', 'pearl barley, dry', 9.91, 77.72, 1.16, 352]],
  },
  {
    kind: 'oat bran',
    factors: { protein: 1.82, carbohydrate: 2.35, fat: 8.37, alcohol },
    foods: [['20033', 'oat bran', 17.3, 66.22, 7.03, 246]],
  },
  {
    kind: 'potatoes',
    factors: { protein: 2.78, carbohydrate: 4.03, fat: 8.37, alcohol },
    foods: [
      ['11352', 'potato, raw', 2.05, 17.49, 0.09, 77],
      ['11507', 'sweet potato, raw', 1.57, 20.12, 0.05, 86],
      ['11508', 'sweet potato, baked', 2.01, 20.71, 0.15, 90],
    ],
  },
  {
    kind: 'roots and bulbs',
    factors: { protein: 2.78, carbohydrate: 3.84, fat: 8.37, alcohol },
    foods: [
      ['11124', 'carrots, raw', 0.93, 9.58, 0.24, 41],
      ['11282', 'onion, raw', 1.1, 9.34, 0.1, 40],
    ],
  },
  {
    kind: 'other vegetables',
    factors: { protein: 2.44, carbohydrate: 3.57, fat: 8.37, alcohol },
    foods: [
      ['11090', 'broccoli, raw', 2.82, 6.64, 0.37, 34],
      ['11457', 'spinach, raw', 2.86, 3.63, 0.39, 23],
      ['11529', 'tomato, raw', 0.88, 3.89, 0.2, 18],
    ],
  },
  {
    kind: 'pulses and nuts',
    factors: { protein: 3.47, carbohydrate: 4.07, fat: 8.37, alcohol },
    foods: [
      ['16069', 'lentils, dry', 24.63, 63.35, 1.06, 352],
      ['16057', 'chickpeas, cooked', 8.86, 27.42, 2.59, 164],
      ['16426', 'tofu, firm', 17.27, 2.78, 8.72, 144],
      ['12061', 'almonds', 21.15, 21.55, 49.93, 579],
      ['12155', 'walnuts', 15.23, 13.71, 65.21, 654],
      ['16390', 'peanuts, dry-roasted', 24.35, 21.26, 49.66, 587],
      ['12220', 'flaxseed', 18.29, 28.88, 42.16, 534],
    ],
  },
  {
    kind: 'fruit',
    factors: { protein: 3.36, carbohydrate: 3.6, fat: 8.37, alcohol },
    foods: [
      ['09040', 'banana', 1.09, 22.84, 0.33, 89],
      ['09003', 'apple', 0.26, 13.81, 0.17, 52],
      ['09200', 'orange', 0.94, 11.75, 0.12, 47],
      ['09050', 'blueberries', 0.74, 14.49, 0.33, 57],
      ['09298', 'raisins', 3.07, 79.18, 0.46, 299],
    ],
  },
  {
    kind: 'plant oils',
    factors: { protein: 0, carbohydrate: 0, fat: 8.84, alcohol },
    foods: [
      ['04053', 'olive oil', 0, 0, 100, 884],
      ['42231', 'flax oil', 0.11, 0, 99.98, 884],
    ],
  },
  {
    kind: 'fish oils',
    factors: { protein: 0, carbohydrate: 0, fat: 9.02, alcohol },
    foods: [['04593', 'fish oil, salmon', 0, 0, 100, 902]],
  },
  {
    kind: 'sucrose',
    factors: { protein: 0, carbohydrate: 3.87, fat: 0, alcohol },
    foods: [['19335', 'sugar', 0, 99.98, 0, 387]],
  },
  {
    kind: 'honey',
    factors: { protein: 3.36, carbohydrate: 3.68, fat: 8.37, alcohol },
    foods: [['19296', 'honey', 0.3, 82.4, 0, 304]],
  },
];

const all = kinds.flatMap(({ kind, factors, foods }) => foods.map((food) => ({ kind, factors, food })));

describe('energy by specific Atwater factors', () => {
  it('is checked on at least 40 foods', () => {
    expect(all.length).toBeGreaterThanOrEqual(40);
  });

  it.each(all)('gives the published kcal of $food.1 ($food.0, factors of $kind)', ({ factors, food }) => {
    const [, , proteinG, carbohydrateG, fatG, kcal] = food;
    // Published to 1 kcal from figures with more decimals than are printed: half a kcal and a little.
    expect(Math.abs(energyKcal({ proteinG, carbohydrateG, fatG }, factors) - kcal)).toBeLessThan(0.6);
  });

  it('has no factor under the lowest that a label may use', () => {
    const factors = all.map((food) => food.factors);
    const least = (of: (factors: EnergyFactors) => number) =>
      Math.min(...factors.map(of).filter((f) => f > 0));
    expect(least((f) => f.protein)).toBe(lowestSpecificFactors.protein);
    expect(least((f) => f.carbohydrate)).toBe(lowestSpecificFactors.carbohydrate);
    expect(least((f) => f.fat)).toBe(lowestSpecificFactors.fat);
  });

  it('agrees with the starter larder', () => {
    for (const { food } of all) {
      const [ndb, , proteinG, carbohydrateG, fatG, kcal] = food;
      const starter = starterFoods.find((candidate) => candidate.ndb === ndb);
      if (starter) expect(starter.per100).toMatchObject({ energyKcal: kcal, proteinG, carbohydrateG, fatG });
    }
  });
});

describe('energy by general factors differs from the published one', () => {
  it.each([
    ['05064', 156.2],
    ['20038', 394.7],
    ['09040', 98.7],
    ['11090', 41.2],
    ['01124', 48.1],
    ['12061', 620.2],
  ])('%s: %d kcal', (ndb, general) => {
    const [, , proteinG, carbohydrateG, fatG] = all.find(({ food }) => food[0] === ndb)?.food ?? [];
    expect(
      energyKcal({ proteinG: proteinG ?? 0, carbohydrateG: carbohydrateG ?? 0, fatG: fatG ?? 0 }),
    ).toBeCloseTo(general, 1);
  });
});
