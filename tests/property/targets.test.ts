import { energyKcal } from '@platewright/core/foods/atwater.ts';
import { endOfDay, minutesOf, timeOf } from '@platewright/core/season/time-of-day.ts';
import { dayTargets } from '@platewright/core/targets/day-targets.ts';
import { fatLimits } from '@platewright/core/targets/fat.ts';
import { mealTimes } from '@platewright/core/targets/meal-times.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { athleteOf, callOf, phaseOf } from '../support/season.ts';

const time = fc.integer({ min: 0, max: 24 * 60 - 1 }).map(timeOf);
const kind = fc.constantFrom('session' as const, 'recovery' as const);
const athlete = fc
  .record({
    sex: fc.constantFrom('female' as const, 'male' as const),
    birthYear: fc.integer({ min: 1940, max: 2012 }),
    heightCm: fc.double({ min: 140, max: 215, noNaN: true }),
    startMassKg: fc.double({ min: 40, max: 200, noNaN: true }),
    meals: fc.integer({ min: 3, max: 8 }),
    wake: time,
    sleep: time,
    trainingTime: time,
    proteinGPerKg: fc.double({ min: 0.6, max: 4.5, noNaN: true }),
    fatGPerKg: fc.double({ min: 0.4, max: 2.5, noNaN: true }),
  })
  .map(athleteOf);
const mark = fc.integer({ min: 10, max: 240 }).map((fives) => 5 * fives);
const date = '2026-02-02';

function targetsOf(person: ReturnType<typeof athleteOf>, day: 'session' | 'recovery', markG?: number) {
  const calls = markG === undefined ? [] : [callOf({ markG, bodyMassKg: person.startMassKg })];
  return dayTargets({ athlete: person, phases: [phaseOf()], calls }, date, day);
}

describe('targets', () => {
  it('have meals that add up to the day', () => {
    fc.assert(
      fc.property(athlete, kind, fc.option(mark, { nil: undefined }), (person, day, markG) => {
        const targets = targetsOf(person, day, markG);
        const sum = (key: 'proteinG' | 'carbohydrateG' | 'fatG' | 'quickG') =>
          targets.meals.reduce((total, meal) => total + meal[key], 0);
        expect(targets.meals.map((meal) => meal.meal)).toEqual(
          Array.from({ length: person.meals }, (_, i) => i + 1),
        );
        expect(sum('proteinG')).toBe(targets.protein.quotaG);
        expect(sum('carbohydrateG')).toBe(targets.carbohydrate.markG);
        expect(sum('fatG')).toBe(targets.fat.targetG);
        expect(sum('quickG')).toBe(targets.carbohydrate.quickG);
        expect(targets.energyKcal).toBe(
          energyKcal({ proteinG: sum('proteinG'), carbohydrateG: sum('carbohydrateG'), fatG: sum('fatG') }),
        );
        for (const meal of targets.meals) expect(meal.quickG).toBeLessThanOrEqual(meal.carbohydrateG);
        if (day === 'recovery') expect(targets.carbohydrate.quickG).toBe(0);
      }),
    );
  });

  it('never put fat under its least by body mass, and say when it is under its share of energy', () => {
    fc.assert(
      fc.property(athlete, kind, mark, (person, day, markG) => {
        const { fat, energyKcal: energy, bodyMassKg, gaveWay } = targetsOf(person, day, markG);
        expect(fat.targetG).toBeGreaterThanOrEqual(fatLimits.gPerKg * bodyMassKg);
        expect(fat.floorG).toBeGreaterThanOrEqual(fatLimits.gPerKg * bodyMassKg);
        const said = gaveWay.some((sentence) => sentence.startsWith('The fat floor'));
        expect(said).toBe(fat.targetG < fat.floorG);
        if (!said) expect(9 * fat.targetG).toBeGreaterThanOrEqual(fatLimits.energyShare * energy - 1e-9);
      }),
    );
  });

  it('rise with body mass, rate and mark', () => {
    const more = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(athlete, more, fc.double({ min: 0, max: 1, noNaN: true }), (person, kg, rate) => {
        const base = targetsOf(person, 'session');
        const heavier = targetsOf({ ...person, startMassKg: person.startMassKg + kg }, 'session');
        const higher = targetsOf({ ...person, proteinGPerKg: person.proteinGPerKg + rate }, 'session');
        for (const next of [heavier, higher]) {
          expect(next.protein.quotaG).toBeGreaterThanOrEqual(base.protein.quotaG);
          expect(next.carbohydrate.bandLowG).toBeGreaterThanOrEqual(base.carbohydrate.bandLowG);
          expect(next.carbohydrate.bandHighG).toBeGreaterThanOrEqual(base.carbohydrate.bandHighG);
          expect(next.carbohydrate.markG).toBeGreaterThanOrEqual(base.carbohydrate.markG);
          expect(next.fat.floorG).toBeGreaterThanOrEqual(base.fat.floorG);
          expect(next.energyKcal).toBeGreaterThanOrEqual(base.energyKcal);
        }
        // The quota is in whole grams, half a gram of which may be rounding.
        const perMeal = (base.protein.quotaG + 0.5) / person.meals;
        expect(base.protein.perMealMinimumG).toBeLessThanOrEqual(perMeal + 1e-9);
      }),
    );
    fc.assert(
      fc.property(athlete, mark, mark, (person, a, b) => {
        const low = targetsOf(person, 'session', Math.min(a, b));
        const high = targetsOf(person, 'session', Math.max(a, b));
        expect(high.fat.floorG).toBeGreaterThanOrEqual(low.fat.floorG);
        expect(high.energyKcal).toBeGreaterThanOrEqual(low.energyKcal);
      }),
    );
  });

  it('start with the mark inside the band', () => {
    fc.assert(
      fc.property(athlete, (person) => {
        const { bandLowG, bandHighG, markG } = targetsOf(person, 'session').carbohydrate;
        expect(markG).toBeGreaterThanOrEqual(bandLowG);
        expect(markG).toBeLessThanOrEqual(bandHighG);
      }),
    );
  });
});

describe('meal times', () => {
  it('come in order, as many as asked, between wake and sleep', () => {
    fc.assert(
      fc.property(athlete, kind, (person, day) => {
        const times = mealTimes(person, day);
        const wake = minutesOf(person.wake);
        const sleep = endOfDay(person);
        expect(times).toHaveLength(person.meals);
        for (const [i, { minutes }] of times.entries()) {
          expect(minutes).toBeGreaterThanOrEqual(wake);
          expect(minutes).toBeLessThanOrEqual(sleep);
          expect(minutes).toBeGreaterThanOrEqual(times[i - 1]?.minutes ?? wake);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('stand two to three hours before, about an hour before and soon after a session that leaves room', () => {
    const afternoon = fc.integer({ min: 11 * 60, max: 19 * 60 });
    fc.assert(
      fc.property(afternoon, fc.integer({ min: 4, max: 8 }), (training, meals) => {
        const day = { meals, wake: '06:30', sleep: '23:00', trainingTime: timeOf(training) };
        const at = (role: string) =>
          mealTimes(day, 'session').find((meal) => meal.role === role)?.minutes ?? 0;
        expect(training - at('before training')).toBeGreaterThanOrEqual(120);
        expect(training - at('before training')).toBeLessThanOrEqual(180);
        expect(Math.abs(training - at('small, before training') - 60)).toBeLessThanOrEqual(5);
        expect(at('after training') - training).toBeGreaterThan(60);
        expect(at('after training') - training).toBeLessThanOrEqual(120);
      }),
    );
  });

  it('spread the others over the day, from waking to sleep', () => {
    const day = { wake: '07:00', sleep: '23:00', trainingTime: '17:00' };
    const times = (meals: number, kind: 'session' | 'recovery') =>
      mealTimes({ ...day, meals }, kind).map(({ minutes }) => timeOf(minutes));
    expect(times(6, 'session')).toEqual(['07:30', '11:00', '14:30', '16:00', '18:15', '22:00']);
    expect(times(4, 'session')).toEqual(['07:30', '14:30', '16:00', '18:15']);
    expect(times(5, 'recovery')).toEqual(['07:30', '11:10', '14:45', '18:25', '22:00']);
  });

  it('leave out what there is no time for before a session soon after waking', () => {
    const roles = (trainingTime: string) =>
      mealTimes({ meals: 6, wake: '06:00', sleep: '22:00', trainingTime }, 'session').map(
        (meal) => meal.role,
      );
    expect(roles('06:15').slice(0, 2)).toEqual(['after training', 'meal']);
    expect(roles('07:00').slice(0, 2)).toEqual(['small, before training', 'after training']);
    expect(roles('08:30').slice(0, 3)).toEqual([
      'before training',
      'small, before training',
      'after training',
    ]);
  });
});
