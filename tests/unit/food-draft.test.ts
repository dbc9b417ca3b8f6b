import type { Food } from '@platewright/core/records/kinds.ts';
import { expect, it } from 'vitest';
import { draftOfFood, readFigure, readFood } from '../../daemon/dashboard/pages/larder/food-draft.ts';

/** Typed from a label for 30 g, in kcal. */
const food: Food = {
  id: 'whey',
  athlete: 'a',
  name: 'Whey',
  aliases: [],
  state: 'dry',
  per100: { energyKcal: 11_300 / 30, proteinG: 2300 / 30, carbohydrateG: 7, fatG: 5 },
  portions: [],
};

it('leaves the figures of a food alone that is only called something else', () => {
  for (const unit of ['kcal', 'kJ'] as const) {
    const renamed = { ...draftOfFood(food, unit), name: 'House whey' };
    expect(readFood(renamed, unit, food)).toMatchObject({ name: 'House whey', per100: food.per100 });
  }
});

it('takes figures that were typed', () => {
  const draft = draftOfFood(food, 'kcal');
  const nutrients = { ...draft.nutrients, proteinG: '40 G' };
  const typed = { ...draft, per: '50 g', nutrients, portions: [{ name: 'scoop', grams: '30 g' }] };
  expect(readFood(typed, 'kcal', food)).toMatchObject({
    per100: { proteinG: 80, carbohydrateG: 14 },
    portions: [{ name: 'scoop', grams: 30 }],
  });
});

it.each(['1.590', '1,590 kJ', '12.500'])('takes no thousands for decimals in %s', (energyKcal) => {
  const draft = draftOfFood(food, 'kJ');
  expect(readFood({ ...draft, nutrients: { ...draft.nutrients, energyKcal } }, 'kJ')).toBeNull();
  expect(readFood({ ...draft, per: '1,000 g' }, 'kJ')).toBeNull();
  expect(readFood({ ...draft, portions: [{ name: 'loaf', grams: '1.000' }] }, 'kJ')).toBeNull();
  const fine = { ...draft, nutrients: { ...draft.nutrients, fatG: '1.234', energyKcal: '0.500 kcal' } };
  expect(readFood(fine, 'kJ')).toMatchObject({ per100: { fatG: 1.234, energyKcal: 0.5 } });
});

it('takes no figure that is more than any food holds, as one is for the wrong grams', () => {
  const draft = draftOfFood(food, 'kcal');
  expect(readFood({ ...draft, per: '0.1' }, 'kcal')).toBeNull();
  expect(readFigure({ ...draft, per: '0.1' }, 'energyKcal', 'kcal')).toBeNaN();
  expect(readFigure({ ...draft, per: '0.1' }, 'fatG', 'kcal')).toBeNaN();
  expect(readFigure({ ...draft, per: '0.5' }, 'fatG', 'kcal')).toBe(1000);
});
