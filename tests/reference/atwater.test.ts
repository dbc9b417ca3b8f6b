import { energyKcal } from '@platewright/core/foods/atwater.ts';
import { describe, expect, it } from 'vitest';
import { euEnergy } from '../support/label-print.ts';

describe('general Atwater factors (Merrill & Watt 1973; 21 CFR 101.9(c)(1)(i)(B))', () => {
  it('counts protein and carbohydrate at 4, fat at 9 kcal/g', () => {
    expect(energyKcal({ proteinG: 20, carbohydrateG: 30, fatG: 10 })).toBe(290);
    expect(energyKcal({ proteinG: 31.02, carbohydrateG: 0, fatG: 3.57 })).toBeCloseTo(156.21, 10);
    expect(energyKcal({ proteinG: 25, carbohydrateG: 3, fatG: 1.5 })).toBe(125.5);
  });

  it('counts alcohol at 7 kcal/g (Regulation (EU) 1169/2011, Annex XIV)', () => {
    expect(energyKcal({ proteinG: 0, carbohydrateG: 0, fatG: 0, alcoholG: 10 })).toBe(70);
  });
});

describe('Regulation (EU) 1169/2011, Annex XIV', () => {
  it('sums kJ and kcal from their own factors', () => {
    const oats = euEnergy({ fatG: 6.52, carbohydrateG: 57.6, proteinG: 13.15, fibreG: 10.1 });
    expect(oats.kJ).toBeCloseTo(1524.79, 10);
    expect(oats.kcal).toBeCloseTo(361.88, 10);
  });

  it('takes polyols out of the carbohydrate they are declared in', () => {
    const bar = euEnergy({ fatG: 12, carbohydrateG: 30, polyolsG: 15, proteinG: 33, fibreG: 8 });
    expect(bar.kJ).toBeCloseTo(1474, 10);
    expect(bar.kcal).toBeCloseTo(352, 10);
  });

  it('gives 89 kJ and 21.4 kcal for one gram of each of five components', () => {
    const each = euEnergy({ fatG: 1, carbohydrateG: 2, polyolsG: 1, proteinG: 1, fibreG: 1 });
    expect(each.kJ).toBeCloseTo(89, 10);
    expect(each.kcal).toBeCloseTo(21.4, 10);
  });
});
