import { checkLabel } from '@platewright/core/foods/label-check.ts';
import { sumNutrients } from '@platewright/core/foods/nutrients.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { foodSchema } from '@platewright/core/records/food.ts';
import type { Nutrients } from '@platewright/core/records/nutrients.ts';
import { idSchema } from '@platewright/core/records/scalars.ts';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { readUsdaFoods, readUsdaPortions, usdaAbsentSentence, usdaPresent } from '../support/usda.ts';

function per100(ndb: string): Nutrients {
  const food = starterFoods.find((candidate) => candidate.ndb === ndb);
  if (!food) throw new Error(`No starter food ${ndb}`);
  return food.per100;
}

describe('the starter larder', () => {
  it('has at least 150 foods that are whole, valid records', () => {
    expect(starterFoods.length).toBeGreaterThanOrEqual(150);
    for (const { id, ...food } of starterFoods) {
      expect(z.parse(idSchema, id)).toBe(id);
      expect(z.parse(foodSchema, food), food.name).toEqual(food);
    }
  });

  it('has one id, one name and one NDB number for each food', () => {
    for (const of of [
      starterFoods.map((food) => food.id),
      starterFoods.map((food) => food.name.toLowerCase()),
      starterFoods.flatMap((food) => food.ndb ?? []),
    ]) {
      expect(of.filter((text, i) => of.indexOf(text) !== i)).toEqual([]);
    }
  });

  it('lets another word mean one food only', () => {
    const words = starterFoods.flatMap((food) => [food.name.toLowerCase(), ...food.aliases]);
    expect(words.filter((word, i) => words.indexOf(word) !== i)).toEqual([]);
    for (const food of starterFoods) {
      for (const alias of food.aliases) expect(alias).toBe(alias.toLowerCase());
      const portions = food.portions.map((portion) => portion.name);
      expect(new Set(portions).size, food.name).toBe(portions.length);
    }
  });

  it('calls carbohydrate quick or complex only where there is some', () => {
    for (const food of starterFoods.filter((candidate) => candidate.carbohydrate)) {
      expect(food.per100.carbohydrateG, food.name).toBeGreaterThan(5);
    }
  });

  it('has no food whose energy its own grams contradict', () => {
    for (const food of starterFoods) {
      expect(checkLabel(food, 'kcal').verdict, `${food.name}: ${checkLabel(food, 'kcal').words}`).not.toBe(
        'disagrees',
      );
    }
  });
});

const columns = {
  energyKcal: ['energy_kcal'],
  proteinG: ['protein_g'],
  carbohydrateG: ['carbohydrate_by_difference_g'],
  fatG: ['fat_g'],
  fibreG: ['fibre_g'],
  sugarsG: ['sugars_g'],
  saturatesG: ['saturates_g'],
  linoleicG: ['f18d2n6_g', 'f18d2_g'],
  alphaLinolenicG: ['f18d3n3_g', 'f18d3_g'],
  leucineG: ['leu_g'],
  sodiumMg: ['sodium_mg'],
} as const;

describe.runIf(usdaPresent)(
  'against the USDA tables (National Nutrient Database for Standard Reference 28)',
  () => {
    const foods = usdaPresent ? readUsdaFoods() : new Map<string, Record<string, string>>();
    const portions = usdaPresent
      ? readUsdaPortions()
      : new Map<string, { amount: number; grams: number }[]>();
    const published = starterFoods.filter((food) => food.ndb !== undefined);

    it('reads whole tables', () => {
      expect(foods.size).toBe(8789);
      expect(published.length).toBe(starterFoods.length - 1);
    });

    it('states every figure as published, masses to 0.01 g, and none that was not reported', () => {
      for (const food of published) {
        const row = foods.get(food.ndb ?? '') ?? {};
        for (const [key, names] of Object.entries(columns)) {
          const text = names.map((name) => row[name] ?? '').find((cell) => cell !== '');
          const stated = new Map(Object.entries(food.per100)).get(key);
          if (text === undefined) expect(stated, `${food.name} ${key}`).toBeUndefined();
          else
            expect(Math.abs((stated ?? Number.NaN) - Number(text)), `${food.name} ${key}`).toBeLessThan(
              0.00501,
            );
        }
        const [epa, dha] = [row.epa_g ?? '', row.dha_g ?? ''];
        if (epa === '' || dha === '') expect(food.per100.epaDhaG, food.name).toBeUndefined();
        else
          expect(Math.abs((food.per100.epaDhaG ?? Number.NaN) - Number(epa) - Number(dha))).toBeLessThan(
            0.00501,
          );
        expect(food.per100.alcoholG ?? 0, food.name).toBe(Number(row.alcohol_g));
      }
    });

    it('states the grams of every portion as published', () => {
      for (const food of published) {
        const known = portions.get(food.ndb ?? '') ?? [];
        for (const portion of food.portions) {
          const fits = known.some(
            ({ amount, grams }) =>
              Math.abs(grams / amount - portion.grams) < 0.06 || Math.abs(grams - portion.grams) < 0.06,
          );
          expect(fits, `${food.name}: ${portion.name} ${portion.grams}`).toBe(true);
        }
      }
    });

    it('takes generic foods only: no description carries a name in capitals', () => {
      for (const food of published) {
        const description = (foods.get(food.ndb ?? '')?.description ?? '').replace('USDA', '');
        expect(description, food.name).not.toMatch(/\b[A-Z]{3,}/);
      }
    });
  },
);

it.runIf(!usdaPresent)(`the starter larder: ${usdaAbsentSentence}`, () => {
  expect(usdaPresent).toBe(false);
});

describe('what the table says about a plate', () => {
  const amount = (of: Nutrients, grams: number) => sumNutrients([{ per100: of, grams }]).known;

  it('knows the egg: white 33 g, yolk 17 g, together one large egg', () => {
    const white = amount(per100('01124'), 33);
    const yolk = amount(per100('01125'), 17);
    const whole = amount(per100('01123'), 50);
    expect(white.energyKcal).toBeCloseTo(17.2, 1);
    expect(white.proteinG).toBeCloseTo(3.6, 2);
    expect(yolk.energyKcal).toBeCloseTo(54.7, 1);
    expect(yolk.proteinG).toBeCloseTo(2.7, 2);
    expect(yolk.fatG).toBeCloseTo(4.51, 2);
    expect(whole.energyKcal).toBeCloseTo(71.5, 10);
  });

  // common practice, no source: at least three yolks to ten whites
  it('counts ten whites and three yolks as 44.1 g protein, 14.1 g fat, 336 kcal', () => {
    const { known, partly } = sumNutrients([
      { per100: per100('01124'), grams: 10 * 33 },
      { per100: per100('01125'), grams: 3 * 17 },
    ]);
    expect(known.proteinG).toBeCloseTo(44.1, 1);
    expect(known.fatG).toBeCloseTo(14.1, 1);
    expect(known.energyKcal).toBeCloseTo(336, 0);
    expect(partly).toEqual([]);
  });

  it('counts the leucine of 80 g dry oats with 200 g egg white: 32.32 g protein, 2.82 g leucine', () => {
    const { known } = sumNutrients([
      { per100: per100('08120'), grams: 80 },
      { per100: per100('01124'), grams: 200 },
    ]);
    expect(known.proteinG).toBeCloseTo(32.32, 10);
    expect(known.leucineG).toBeCloseTo(2.82, 2);
  });

  it('knows the oils: a tablespoon of flax oil and a teaspoon of salmon oil', () => {
    const flax = amount(per100('42231'), 13.6);
    expect(flax.alphaLinolenicG).toBeCloseTo(7.26, 2);
    expect(flax.linoleicG).toBeCloseTo(1.94, 2);
    expect(flax.energyKcal).toBeCloseTo(120.2, 1);
    expect(amount(per100('04593'), 4.5).epaDhaG).toBeCloseTo(1.41, 2);
  });
});
