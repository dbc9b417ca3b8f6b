import { energyKcal } from '@platewright/core/foods/atwater.ts';
import { checkLabel } from '@platewright/core/foods/label-check.ts';
import { energyBehind, fatBehind, gramsBehind } from '@platewright/core/foods/label-rounding.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { euEnergy, euLabelGrams, usLabelEnergy, usLabelFat, usLabelGrams } from '../support/label-print.ts';

const share = fc.nat({ max: 1000 });

/** True contents of 100 g: parts of a whole, fibre part of the carbohydrate. */
const contents = fc
  .record({ protein: share, carbohydrate: share, fat: share, water: share, fibre: share })
  .map(({ protein, carbohydrate, fat, water, fibre }) => {
    const gramsPerShare = 100 / Math.max(1, protein + carbohydrate + fat + water);
    const carbohydrateG = carbohydrate * gramsPerShare;
    return {
      proteinG: protein * gramsPerShare,
      carbohydrateG,
      fatG: fat * gramsPerShare,
      fibreG: (carbohydrateG * fibre) / 1000,
    };
  });
type Contents = { proteinG: number; carbohydrateG: number; fatG: number; fibreG: number };

const methods: Record<string, (true100: Contents) => number> = {
  'all carbohydrate at 4 kcal/g': (c) => energyKcal(c),
  'carbohydrate less fibre at 4 kcal/g': (c) =>
    energyKcal({ ...c, carbohydrateG: c.carbohydrateG - c.fibreG }),
  'EU factors, fibre at 2 kcal/g': (c) => euEnergy({ ...c, carbohydrateG: c.carbohydrateG - c.fibreG }).kcal,
};

const servings = fc.double({ min: 10, max: 400, noNaN: true });

describe.each(Object.entries(methods))('an honest label, %s', (_, method) => {
  it('is never flagged when rounded as in the US for a portion', () => {
    fc.assert(
      fc.property(contents, servings, (true100, grams) => {
        const inServing = (value: number) => (value * grams) / 100;
        const per100 = (value: number) => (value * 100) / grams;
        const label = {
          energyKcal: per100(usLabelEnergy(inServing(method(true100)))),
          proteinG: per100(usLabelGrams(inServing(true100.proteinG))),
          carbohydrateG: per100(usLabelGrams(inServing(true100.carbohydrateG))),
          fatG: per100(usLabelFat(inServing(true100.fatG))),
          fibreG: per100(usLabelGrams(inServing(true100.fibreG))),
        };
        const check = checkLabel({ per100: label, portions: [{ name: 'serving', grams }] }, 'kcal');
        expect(check).toEqual({ verdict: 'agrees', words: '' });
      }),
    );
  });

  it('is never flagged when rounded as in the EU for 100 g', () => {
    fc.assert(
      fc.property(contents, (true100) => {
        const label = {
          energyKcal: Math.round(method(true100)),
          proteinG: euLabelGrams(true100.proteinG),
          carbohydrateG: euLabelGrams(true100.carbohydrateG),
          fatG: euLabelGrams(true100.fatG),
          fibreG: euLabelGrams(true100.fibreG),
        };
        expect(checkLabel({ per100: label, portions: [] }, 'kcal').verdict).toBe('agrees');
      }),
    );
  });
});

it('a printed figure stands for a range that holds the true value', () => {
  const value = fc.double({ min: 0, max: 900, noNaN: true });
  const holds = (behind: { low: number; high: number }, truth: number) =>
    behind.low - 1e-9 <= truth && truth <= behind.high + 1e-9;
  fc.assert(
    fc.property(value, (truth) => {
      expect(holds(energyBehind(usLabelEnergy(truth)), truth)).toBe(true);
      expect(holds(fatBehind(usLabelFat(truth)), truth)).toBe(true);
      expect(holds(gramsBehind(usLabelGrams(truth)), truth)).toBe(true);
      expect(holds(fatBehind(euLabelGrams(truth)), truth)).toBe(true);
      expect(holds(gramsBehind(euLabelGrams(truth)), truth)).toBe(true);
    }),
  );
});
