import { energyKcal } from '@platewright/core/foods/atwater.ts';
import { energyAvailability, sessionKcal } from '@platewright/core/maintenance/energy-availability.ts';
import { kgPerSurplusKcal } from '@platewright/core/maintenance/energy-density.ts';
import { expectedEnergy } from '@platewright/core/maintenance/expected-energy.ts';
import { carbohydrateBand, startMark } from '@platewright/core/targets/carbohydrate.ts';
import { dayTargets } from '@platewright/core/targets/day-targets.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import { essentialFats, fatFloor, fatForShare } from '@platewright/core/targets/fat.ts';
import { perMealRates, proteinRates, proteinTargets } from '@platewright/core/targets/protein.ts';
import { kgFromPounds } from '@platewright/core/units/mass.ts';
import { describe, expect, it } from 'vitest';
import { athleteOf, callOf, phaseOf } from '../support/season.ts';

const lb180 = kgFromPounds(180);
const lb200 = kgFromPounds(200);
const plan = { athlete: athleteOf(), phases: [phaseOf()], calls: [] };

describe('rules of the trade (common practice, no source)', () => {
  it('asks for 300 g of protein at 200 lb, 270 g at 180 lb', () => {
    expect(proteinTargets(lb200, proteinRates.practice, 6).quotaG).toBe(300);
    expect(proteinTargets(lb180, proteinRates.practice, 6).quotaG).toBe(270);
    expect(proteinRates.practice).toBeCloseTo(3.306934, 6);
  });

  it('derives 450 to 600 g of carbohydrate from 300 g of protein, 405 to 540 g from 270 g', () => {
    expect(carbohydrateBand(300)).toEqual({ lowG: 450, highG: 600 });
    expect(carbohydrateBand(270)).toEqual({ lowG: 405, highG: 540 });
    expect(startMark(300)).toBe(525);
  });

  it('starts with five or six meals, 45 to 54 g of protein each at 180 lb', () => {
    expect([5, 6]).toContain(setUpDefaults.meals);
    const athlete = athleteOf({ startMassKg: lb180 });
    expect(dayTargets({ ...plan, athlete }, '2026-02-02').meals.map((meal) => meal.proteinG)).toEqual(
      Array(6).fill(45),
    );
    const five = dayTargets({ ...plan, athlete: { ...athlete, meals: 5 } }, '2026-02-02');
    expect(five.meals.map((meal) => meal.proteinG)).toEqual(Array(5).fill(54));
  });

  it('takes 2 lb a month as 24 lb a year, 0.2086 kg a week, the low end of 0.25 to 0.5 % at 180 lb', () => {
    const kgPerWeek = (kgFromPounds(2) / (365.25 / 12)) * 7;
    expect(kgPerWeek).toBeCloseTo(0.208634, 6);
    expect((kgPerWeek * 365.25) / 7).toBeCloseTo(kgFromPounds(24), 10);
    expect((100 * kgPerWeek) / lb180).toBeCloseTo(0.256, 3);
  });

  it('comes to 3,330 to 3,870 kcal at 180 lb with 70 g of fat', () => {
    expect(energyKcal({ proteinG: 270, carbohydrateG: 405, fatG: 70 })).toBe(3330);
    expect(energyKcal({ proteinG: 270, carbohydrateG: 540, fatG: 70 })).toBe(3870);
  });
});

describe('protein a day (Morton et al. 2018: 1.62 g/kg, 95 % interval to 2.20; Iraki et al. 2019: 1.6 to 2.2)', () => {
  it('shows 130.6 to 179.6 g beside the quota at 180 lb, 145.1 to 199.6 g at 200 lb', () => {
    const at180 = proteinTargets(lb180, proteinRates.practice, 6);
    expect([at180.evidenceLowG, at180.evidenceHighG]).toEqual([131, 180]);
    const at200 = proteinTargets(lb200, proteinRates.practice, 6);
    expect([at200.evidenceLowG, at200.evidenceHighG]).toEqual([145, 200]);
  });
});

describe('protein before a contest (Helms et al. 2014: 2.3 to 3.1 g per kg of lean mass)', () => {
  const cut = phaseOf({ aim: 'pre-contest', pacePercentPerWeek: -0.7, bandLow: -0.9, bandHigh: -0.5 });
  const reason = (proteinGPerKg: number, phase = cut) => {
    const athlete = athleteOf({ startMassKg: lb180, fatPercent: 12, proteinGPerKg });
    return dayTargets({ athlete, phases: [phase], calls: [] }, '2026-02-02').reasons[0];
  };

  it('is 165 to 223 g at 180 lb and 12 % fat, and 2.45 g/kg is then not beyond the evidence', () => {
    expect(reason(2.45)?.text).toContain('before a contest 165 g to 223 g, 2.30 to 3.10 g/kg of lean mass.');
    expect(reason(2.45)?.source).toContain('Helms et al. 2014');
    expect(reason(2.45, phaseOf())?.text).toContain('beyond the evidence');
    expect(reason(proteinRates.practice)?.text).toContain('beyond the evidence');
  });

  it('does not name a source for a quota under the evidence', () => {
    expect(reason(1)?.text).toMatch(/this is less\.$/);
    expect(reason(1)?.source).toBe('your own records');
    expect(reason(1.6)?.source).toContain('Morton');
  });
});

describe('protein a meal (Schoenfeld & Aragon 2018: 0.4 g/kg over four meals; ISSN 2017: 0.25 g/kg)', () => {
  it('asks 32.7 g of a meal at 180 lb, where 0.25 g/kg is 20.4 g', () => {
    expect(proteinTargets(lb180, proteinRates.practice, 6).perMealMinimumG).toBeCloseTo(32.7, 1);
    expect(proteinTargets(lb180, 1.6, 4).perMealMinimumG / lb180).toBeCloseTo(perMealRates.full, 10);
    expect(proteinTargets(lb180, 1.6, 6).perMealMinimumG).toBeCloseTo(20.4, 1);
  });

  // 1.6 g/kg over at least four meals is the paper's own pair of numbers: whole grams must not break it.
  it('holds 0.4 g/kg over four meals at 1.6 g/kg a day for every body mass', () => {
    for (let kg = 50; kg < 130; kg += 0.1)
      expect(proteinTargets(kg, 1.6, 4).perMealMinimumG / kg).toBeCloseTo(perMealRates.full, 10);
    const athlete = athleteOf({ startMassKg: 80.2, proteinGPerKg: 1.6, meals: 4 });
    const { gaveWay } = dayTargets({ ...plan, athlete }, '2026-02-02');
    expect(gaveWay.filter((sentence) => sentence.startsWith('The meal minimum'))).toEqual([]);
  });

  it('falls to an even share when the quota pays for neither', () => {
    const { quotaG, perMealMinimumG } = proteinTargets(lb180, 1.6, 8);
    expect(perMealMinimumG).toBe(quotaG / 8);
  });
});

describe('fat (IOM 2005: 20 to 35 % of energy; Helms et al. 2014: 15 to 30 %; Iraki et al. 2019: 0.5 to 1.5 g/kg)', () => {
  it('solves for the grams that make a share of energy', () => {
    expect(fatForShare(0.2, 270, 405)).toBeCloseTo(75, 10);
    expect(fatForShare(0.15, 270, 405)).toBeCloseTo(52.9, 1);
    expect(fatForShare(0.2, 270, 540)).toBeCloseTo(90, 10);
    expect(fatForShare(0.15, 270, 540)).toBeCloseTo(63.5, 1);
    expect((9 * 62.2) / 2800).toBeCloseTo(0.2, 3);
  });

  it('puts the floor at the larger of the two limits and says which one it is', () => {
    expect(fatFloor(lb180, 270, 405)).toEqual({ floorG: 53, floorRule: '% of energy' });
    expect(fatFloor(lb180, 130, 100)).toEqual({ floorG: 41, floorRule: 'g/kg' });
  });

  it('asks for the adequate intakes of essential fatty acids by sex and age (IOM 2005; EFSA 2010)', () => {
    const at = (sex: 'female' | 'male', ages: number[]) =>
      ages.map((ageYears) => {
        const { linoleicG, alphaLinolenicG, epaDhaG } = essentialFats({ sex, ageYears });
        expect(epaDhaG).toBe(0.25);
        return [linoleicG, alphaLinolenicG];
      });
    expect(at('male', [13, 14, 18, 19, 50, 51, 71])).toEqual([
      [12, 1.2],
      ...[14, 18].map(() => [16, 1.6]),
      ...[19, 50].map(() => [17, 1.6]),
      ...[51, 71].map(() => [14, 1.6]),
    ]);
    expect(at('female', [13, 14, 18, 19, 50, 51, 71])).toEqual([
      [10, 1],
      ...[14, 18].map(() => [11, 1.1]),
      ...[19, 50].map(() => [12, 1.1]),
      ...[51, 71].map(() => [11, 1.1]),
    ]);
    const fats = (birthYear: number) =>
      dayTargets({ ...plan, athlete: athleteOf({ birthYear }) }, '2026-02-02').fat.linoleicG;
    expect([fats(1996), fats(1960)]).toEqual([17, 14]);
  });
});

describe('carbohydrate (Thomas, Erdman & Burke 2016: 3 to 5 light, 5 to 7 g/kg moderate training)', () => {
  it('has the practice’s band at 4.96 to 6.61 g/kg', () => {
    const { lowG, highG } = carbohydrateBand(270);
    expect(lowG / lb180).toBeCloseTo(4.96, 2);
    expect(highG / lb180).toBeCloseTo(6.61, 2);
  });
});

describe('energy', () => {
  it('reckons energy availability (IOC consensus, Mountjoy et al.)', () => {
    expect(energyAvailability(2800, 400, 70)).toBeCloseTo(34.29, 2);
    expect(energyAvailability(1900, 450, 60)).toBeCloseTo(24.17, 2);
  });

  it('reckons a session by its metabolic equivalents (Ainsworth et al. 2011): 330.75 kcal gross an hour at 90 kg and 3.5', () => {
    expect(sessionKcal(90)).toBeCloseTo(330.75 * (2.5 / 3.5), 10);
  });

  it('adds to maintenance the tissue that the aim asks for', () => {
    const person = { sex: 'male', ageYears: 30, heightCm: 180, fatPercent: 15 } as const;
    const hold = expectedEnergy(person, 90, 0);
    const gain = expectedEnergy(person, 90, 0.25);
    expect(gain.kcal - hold.kcal).toBeCloseTo((0.0025 * 90) / 7 / kgPerSurplusKcal(13.5), 10);
    expect(hold.lowKcal).toBeLessThan(hold.kcal);
    expect(hold.highKcal).toBeGreaterThan(hold.kcal);
  });
});

describe('the day of an athlete of 200 lb', () => {
  it('holds together', () => {
    const targets = dayTargets(plan, '2026-02-02');
    expect(targets.protein.quotaG).toBe(300);
    expect(targets.carbohydrate.markG).toBe(525);
    expect(targets.fat.targetG).toBe(91);
    expect(targets.energyKcal).toBe(4 * 300 + 4 * 525 + 9 * 91);
    expect(targets.meals).toHaveLength(6);
    expect(targets.cautions).toEqual([]);
    for (const reason of targets.reasons) expect(reason.source).not.toBe('');
    expect(targets.reasons.map((reason) => reason.about)).toEqual(
      expect.arrayContaining(['protein', 'carbohydrate', 'fat', 'energy', 'meals']),
    );
  });

  it('has no rule that gives way at 180 lb', () => {
    expect(dayTargets({ ...plan, athlete: athleteOf({ startMassKg: lb180 }) }, '2026-02-02').gaveWay).toEqual(
      [],
    );
  });

  it('follows the newest decision, body mass and mark', () => {
    const calls = [callOf(), callOf({ date: '2026-01-22', markG: 575, bodyMassKg: 92 })];
    const before = dayTargets({ ...plan, calls }, '2026-01-14');
    const after = dayTargets({ ...plan, calls }, '2026-01-22');
    expect(before.carbohydrate.markG).toBe(525);
    expect(after.carbohydrate.markG).toBe(575);
    expect(after.bodyMassKg).toBe(92);
  });
});
