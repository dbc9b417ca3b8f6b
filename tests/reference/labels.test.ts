import { checkLabel } from '@platewright/core/foods/label-check.ts';
import { energyBehind } from '@platewright/core/foods/label-rounding.ts';
import { euFatTolerance, euGramsTolerance, US_TOLERANCE } from '@platewright/core/foods/label-tolerance.ts';
import type { Nutrients } from '@platewright/core/records/nutrients.ts';
import { describe, expect, it } from 'vitest';
import {
  euLabelGrams,
  usLabelEnergy,
  usLabelFat,
  usLabelGrams,
  usLabelSodium,
} from '../support/label-print.ts';

describe('rounding on US labels (21 CFR 101.9(c); FDA Food Labeling Guide, Appendix H)', () => {
  it.each([
    [4.9, 0],
    [5, 5],
    [7.4, 5],
    [47.6, 50],
    [54.9, 50],
    [55, 60],
    [114.9, 110],
    [127, 130],
  ])('prints %d kcal as %d', (kcal, printed) => {
    expect(usLabelEnergy(kcal)).toBe(printed);
  });

  it.each([
    [0.49, 0],
    [0.74, 0.5],
    [0.76, 1],
    [4.76, 5],
    [5.4, 5],
    [5.5, 6],
  ])('prints %d g of fat as %d', (grams, printed) => {
    expect(usLabelFat(grams)).toBe(printed);
  });

  it('prints other grams to 1 g and sodium to 5 or 10 mg', () => {
    expect([0.4, 0.6, 1.4, 23.5].map(usLabelGrams)).toEqual([0, 1, 1, 24]);
    expect([4, 6, 137, 143, 156].map(usLabelSodium)).toEqual([0, 5, 135, 140, 160]);
  });
});

it('rounds on EU labels to 0.1 g below 10 g and to 1 g above (Commission guidance 2012, table 4; from memory)', () => {
  expect([0.5, 0.54, 9.94, 12.6].map(euLabelGrams)).toEqual([0, 0.5, 9.9, 13]);
});

it('knows the tolerances: US 20 % (21 CFR 101.9(g)(5)), EU by bands (guidance 2012, table 1; from memory)', () => {
  expect(US_TOLERANCE).toBe(1.2);
  expect([5, 10, 25, 40, 60].map(euGramsTolerance)).toEqual([2, 2, 5, 8, 8]);
  expect([5, 10, 25, 40, 60].map(euFatTolerance)).toEqual([1.5, 2, 5, 8, 8]);
});

function check(
  per100: Nutrients,
  portions: { name: string; grams: number }[] = [],
  unit: 'kcal' | 'kJ' = 'kcal',
) {
  return checkLabel({ per100, portions }, unit);
}

describe('label check', () => {
  const oats = { proteinG: 13, carbohydrateG: 68, fatG: 6.5, fibreG: 10 };

  it('takes 120 and 130 kcal for P 25, C 3, F 1.5 with no tolerance at all', () => {
    const powder = { proteinG: 25, carbohydrateG: 3, fatG: 1.5 };
    expect(energyBehind(120)).toEqual({ low: 115, high: 125 });
    for (const energyKcal of [120, 130]) expect(check({ energyKcal, ...powder }).verdict).toBe('agrees');
    expect(check({ energyKcal: 100, ...powder }).verdict).toBe('within tolerance');
    expect(check({ energyKcal: 70, ...powder }).verdict).toBe('disagrees');
  });

  it('allows for the rounding of a small portion', () => {
    const soySauce = { energyKcal: 10 / 0.15, proteinG: 1 / 0.15, carbohydrateG: 1 / 0.15, fatG: 0 };
    expect(check(soySauce, [{ name: 'tbsp', grams: 15 }]).verdict).toBe('agrees');
    expect(check({ ...soySauce, energyKcal: 200 }, [{ name: 'tbsp', grams: 15 }]).verdict).toBe('disagrees');
  });

  it('says what is off, by how much and what to check', () => {
    expect(check({ energyKcal: 379, ...oats })).toEqual({ verdict: 'agrees', words: '' });
    expect(check({ energyKcal: 520, ...oats }).words).toBe(
      'Declared 520 kcal per 100 g, 103 kcal more than protein, carbohydrate and fat account for (327 kcal to 417 kcal). Check the grams: 12 g of fat or 26 g of carbohydrate would make the difference.',
    );
    expect(check({ energyKcal: 200, ...oats }).words).toContain('127 kcal less than');
    expect(check({ energyKcal: 200, ...oats }).words).toContain('polyols count only 2.4 kcal a gram');
    expect(check({ energyKcal: 200, ...oats }, [], 'kJ').words).toContain('polyols count only 10 kJ a gram');
    expect(check({ energyKcal: 520, ...oats }, [], 'kJ').words).toContain(
      'Declared 2176 kJ per 100 g, 431 kJ more',
    );
  });

  it('recognises kilojoules typed as kilocalories', () => {
    expect(check({ energyKcal: 1586, ...oats }).words).toContain('It looks like kJ: 1586 kJ are 379 kcal.');
  });

  it('recognises carbohydrate that excludes fibre, and parts larger than their whole', () => {
    const chia = { energyKcal: 486, proteinG: 17, carbohydrateG: 7.7, fatG: 31, fibreG: 34 };
    expect(check(chia).words).toContain('add the fibre to it');
    expect(check({ ...chia, fibreG: 5, sugarsG: 20 }).words).toContain(
      'Sugars are more than the carbohydrate',
    );
    expect(check({ ...chia, fibreG: 5, saturatesG: 60 }).words).toContain('Saturates are more than the fat');
    const whole = { ...chia, carbohydrateG: 42 };
    expect(check({ ...whole, linoleicG: 30, alphaLinolenicG: 20 }).words).toContain(
      'fatty acids are more than the fat',
    );
    expect(check({ ...whole, leucineG: 25 }).words).toContain('Leucine is more than the protein');
    expect(check({ ...whole, sodiumMg: 50_000 }).words).toContain('Sodium is more than in salt itself');
    expect(check({ ...whole, sodiumMg: 16, leucineG: 1.4, alphaLinolenicG: 17.8 }).words).toBe('');
  });

  it('recognises by its energy a label whose carbohydrate leaves fibre out, and lets it pass', () => {
    const muesli = { energyKcal: 360, proteinG: 10.5, carbohydrateG: 58, fatG: 7.2, fibreG: 9 };
    const words = 'Carbohydrate here includes it: 67 g per 100 g.';
    expect(check(muesli)).toEqual({ verdict: 'agrees', words: expect.stringContaining(words) });
    expect(check({ ...muesli, carbohydrateG: 67 })).toEqual({ verdict: 'agrees', words: '' });
  });

  it('recognises figures for another serving', () => {
    expect(check({ energyKcal: 400, proteinG: 80, carbohydrateG: 30, fatG: 5 }).words).toContain(
      'add up to 114 g in 100 g',
    );
  });
});
