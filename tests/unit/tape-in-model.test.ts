import { fitModel } from '@platewright/core/maintenance/model.ts';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../bench/virtual-athletes/random.ts';

const person = { sex: 'male', ageYears: 30, heightCm: 180, fatPercent: 15 } as const;
const plan = { proteinG: 220, carbohydrateG: 400, fatG: 80 };
const DAYS = 42;
const dayOf = (index: number) =>
  new Date(Date.UTC(2025, 0, 6) + index * 86_400_000).toISOString().slice(0, 10);

/** Six weeks in which the scale climbs two kilograms, and a waist that grows by so much, read twice a week. */
function lived(waistCm?: number) {
  const random = seededRandom(3, 5);
  const days = Array.from({ length: DAYS }, (_, index) => ({
    day: dayOf(index),
    weightKg: Math.round(10 * (85 + (2 * index) / DAYS + 0.5 * random.normal())) / 10,
    intake: null,
    prescribed: plan,
  }));
  const waist =
    waistCm === undefined
      ? []
      : Array.from({ length: DAYS / 3 }, (_, index) => ({
          day: dayOf(3 * index),
          cm: 84 + (waistCm * 3 * index) / DAYS,
        }));
  return fitModel(person, days, plan, { waist });
}

describe('tape in the model', () => {
  const none = lived();
  const stands = lived(0);
  const grows = lived(3);

  it('takes a rise of the scale for tissue the less, the less the waist follows', () => {
    expect(stands.tissueKg.mean).toBeLessThan(none.tissueKg.mean);
    expect(grows.tissueKg.mean).toBeGreaterThan(stands.tissueKg.mean);
    expect(stands.maintenanceKcal.mean).toBeGreaterThan(grows.maintenanceKcal.mean);
  });

  it('says a little more surely how fast tissue changes', () => {
    expect(stands.paceKgPerWeek(28).sd).toBeLessThan(none.paceKgPerWeek(28).sd);
    expect(stands.paceKgPerWeek(28).sd).toBeGreaterThan(0.8 * none.paceKgPerWeek(28).sd);
  });

  it('learns nothing from a single reading', () => {
    const days = [{ day: dayOf(0), weightKg: 85, intake: null, prescribed: plan }];
    const once = fitModel(person, days, plan, { waist: [{ day: dayOf(0), cm: 84 }] });
    expect(once.tissueKg).toEqual(fitModel(person, days, plan).tissueKg);
  });
});
