import { calipersFat, foldSites } from '@platewright/core/body/calipers.ts';
import { durninWomersleyFat, jacksonPollockFat } from '@platewright/core/body/calipers-fat.ts';
import { siriPercent } from '@platewright/core/body/fat-finding.ts';
import { fatFreeMassIndex } from '@platewright/core/body/fat-free-index.ts';
import { fatFreeKg } from '@platewright/core/body/fat-free-mass.ts';
import { tapeFat } from '@platewright/core/body/tape-fat.ts';
import { describe, expect, it } from 'vitest';

describe('fat-free mass after a move of body mass (Forbes 1987; Hall 2007: 10.4 kg)', () => {
  const start = { massKg: 90, fatKg: 13.5 };

  it('is the start’s own while body mass stands', () => {
    expect(fatFreeKg(start, 90)).toBeCloseTo(76.5, 10);
  });

  it('follows the curve FFM = 10.4·ln F + constant in a loss', () => {
    const lean = fatFreeKg(start, 80);
    expect(lean).toBeGreaterThan(80 * 0.85);
    expect(76.5 - lean).toBeCloseTo(10.4 * Math.log(13.5 / (80 - lean)), 4);
  });

  it('keeps the share of the start in a gain, where the curve has less, and counts water on the scale', () => {
    expect(fatFreeKg(start, 100)).toBeCloseTo(85, 10);
    expect(fatFreeKg(start, 90, 92)).toBeCloseTo(92 * 0.85, 10);
  });
});

describe('body fat', () => {
  it.each([
    [1.02, 35.29],
    [1.05, 21.43],
    [1.07, 12.62],
    [1.09, 4.13],
  ])('from density %d by Siri 1961', (density, percent) => {
    expect(siriPercent(density)).toBeCloseTo(percent, 2);
  });

  // Hodgdon & Beckett 1984, metric equations; 15.65 and 26.92 % recomputed from them, within 0.3 of the rounded forms
  // in inches of the US Department of Defense (15.69 and 27.20 %).
  it('from the tape by Hodgdon and Beckett', () => {
    const man = tapeFat({ sex: 'male', heightCm: 178, neckCm: 40, waistCm: 86 });
    const woman = tapeFat({ sex: 'female', heightCm: 165, neckCm: 33, waistCm: 72, hipCm: 98 });
    expect(man?.percent).toBeCloseTo(15.65, 2);
    expect(woman?.percent).toBeCloseTo(26.92, 2);
    expect([man?.errorPercent, woman?.errorPercent]).toEqual([3.5, 3.7]);
    const inInches = tapeFat({ sex: 'male', heightCm: 177.8, neckCm: 15.5 * 2.54, waistCm: 34 * 2.54 });
    expect(inInches?.percent).toBeCloseTo(16.46, 2);
  });

  it('from the tape says nothing of what is not a body', () => {
    expect(tapeFat({ sex: 'male', heightCm: 178, neckCm: 40, waistCm: 40 })).toBeNull();
    expect(tapeFat({ sex: 'male', heightCm: 178, neckCm: Number.NaN, waistCm: 90 })).toBeNull();
    expect(tapeFat({ sex: 'male', heightCm: 20, neckCm: 20, waistCm: 250 })).toBeNull();
  });

  // Jackson & Pollock 1978 and Jackson, Pollock & Ward 1980; values recomputed from the equations.
  it.each([
    ['male', 3, 40, 30, 12.12],
    ['male', 3, 60, 25, 17.38],
    ['male', 7, 100, 30, 14.63],
    ['male', 7, 70, 25, 9.59],
    // Densities 1.083372 and 1.08119 of a public work sheet (second-hand), whose digits were typed by someone else.
    ['male', 3, 23.5, 29, 495 / 1.083372 - 450],
    ['male', 7, 55.5, 29, 495 / 1.08119 - 450],
    ['female', 3, 55, 30, 22.48],
    ['female', 7, 120, 30, 23.75],
  ] as const)('from calipers, %s, %d sites, %d mm at %d years', (sex, sites, sum, age, percent) => {
    const found = jacksonPollockFat(sex, sites, sum, age);
    expect(found.percent).toBeCloseTo(percent, 2);
    expect(found.errorPercent).toBeGreaterThan(3);
    expect(found.errorPercent).toBeLessThan(4.5);
  });

  // Jackson & Pollock 1978: 308 and 95 men of 18 to 61 years, standard errors 0.0077 and 0.0078 g/mL; Jackson, Pollock &
  // Ward 1980: 331 women of 18 to 55; Durnin & Womersley 1974: men of 17 to 72 years, women of 16 to 68.
  it('from calipers has the error of density of its equation, and says for whom it was not made', () => {
    const error = (sites: 3 | 7) => {
      const { percent, errorPercent } = jacksonPollockFat('male', sites, 60, 30);
      return errorPercent / ((percent + 450) ** 2 / 495);
    };
    expect(error(3)).toBeCloseTo(0.0077, 6);
    expect(error(7)).toBeCloseTo(0.0078, 6);
    const said = (age: number) => jacksonPollockFat('female', 3, 55, age).method;
    expect(said(55)).toBe('3 skinfolds, Jackson and Pollock 1980');
    expect(said(56)).toBe('3 skinfolds, Jackson and Pollock 1980, made on people of 18 to 55 years');
    expect(durninWomersleyFat('male', 40, 16).method).toContain('17 to 72 years');
    expect(durninWomersleyFat('female', 40, 16).method).toBe('4 skinfolds, Durnin and Womersley 1974');
  });

  // Durnin & Womersley 1974, table of % fat for men printed in the paper.
  it.each([
    [25, 20, 8.1],
    [35, 20, 12.2],
    [45, 20, 12.2],
    [60, 20, 12.6],
    [35, 30, 16.2],
    [45, 30, 17.7],
    [60, 30, 18.6],
    [25, 40, 16.4],
    [35, 40, 19.2],
    [45, 40, 21.4],
    [60, 40, 22.9],
    [25, 50, 19],
    [35, 50, 21.5],
    [45, 50, 24.6],
    [60, 50, 26.5],
  ])('from four skinfolds at %d years, %d mm', (age, sum, percent) => {
    expect(Math.abs(durninWomersleyFat('male', sum, age).percent - percent)).toBeLessThan(0.25);
  });

  it('from calipers asks for the folds of the method, and says nothing while one is missing', () => {
    const woman = { sex: 'female', ageYears: 30 } as const;
    expect(foldSites('female', 'jackson-pollock 3')).toEqual(['triceps', 'suprailiac', 'thigh']);
    expect(foldSites('male', 'jackson-pollock 7')).toHaveLength(7);
    const folds = { triceps: 20, suprailiac: 15, thigh: 20, chest: 80 };
    expect(calipersFat(woman, 'jackson-pollock 3', folds)?.percent).toBeCloseTo(22.48, 2);
    expect(calipersFat(woman, 'jackson-pollock 3', { ...folds, thigh: undefined })).toBeNull();
    const four = { biceps: 10, triceps: 10, subscapular: 10, suprailiac: 10 };
    expect(calipersFat({ sex: 'male', ageYears: 60 }, 'durnin-womersley', four)?.percent).toBeCloseTo(
      22.9,
      0,
    );
  });

  it('from calipers never says less fat for more folds', () => {
    const fat = (sum: number) => jacksonPollockFat('male', 7, sum, 30).percent;
    expect(fat(595)).toBeGreaterThanOrEqual(fat(395));
  });

  it('from four skinfolds takes the class of the age', () => {
    expect(durninWomersleyFat('female', 50, 19).percent).not.toBe(
      durninWomersleyFat('female', 50, 20).percent,
    );
  });
});

describe('fat-free mass index', () => {
  // Kouri et al. 1995 with the abstract's 6.3.
  it.each([
    [90, 12, 180, 24.444, 24.444],
    [81.647, 12, 178, 22.677, 22.803],
    [95, 10, 170, 29.585, 30.215],
  ])('of %d kg at %d %% and %d cm', (mass, fat, height, raw, normalised) => {
    const index = fatFreeMassIndex(mass, fat, height);
    expect(index.raw).toBeCloseTo(raw, 3);
    expect(index.normalised).toBeCloseTo(normalised, 3);
  });
});
