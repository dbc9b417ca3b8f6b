import { sumNutrients } from '@platewright/core/foods/nutrients.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';

const portioned = fc.record({
  per100: fc.constantFrom(...starterFoods.map((food) => food.per100)),
  grams: fc.double({ min: 0, max: 2000, noNaN: true }),
});

it('counts an amount in proportion to its grams', () => {
  fc.assert(
    fc.property(portioned, fc.double({ min: 0, max: 10, noNaN: true }), ({ per100, grams }, factor) => {
      const once = sumNutrients([{ per100, grams }]).known;
      const more = sumNutrients([{ per100, grams: grams * factor }]).known;
      expect(more.energyKcal).toBeCloseTo(once.energyKcal * factor, 6);
      expect(more.proteinG).toBeCloseTo(once.proteinG * factor, 6);
    }),
  );
});

it('sums the same in any order and in any grouping', () => {
  fc.assert(
    fc.property(fc.array(portioned), fc.array(portioned), (some, others) => {
      const together = sumNutrients([...some, ...others]);
      const reversed = sumNutrients([...others.toReversed(), ...some.toReversed()]);
      const [first, second] = [sumNutrients(some), sumNutrients(others)];
      expect(reversed.partly).toEqual(together.partly);
      expect(new Set([...first.partly, ...second.partly])).toEqual(new Set(together.partly));
      for (const key of ['energyKcal', 'proteinG', 'leucineG', 'alcoholG'] as const) {
        expect(reversed.known[key]).toBeCloseTo(together.known[key], 6);
        expect(first.known[key] + second.known[key]).toBeCloseTo(together.known[key], 6);
      }
    }),
  );
});

it('names a nutrient as partly known exactly when a food that was eaten does not report it', () => {
  fc.assert(
    fc.property(fc.array(portioned), (items) => {
      const missing = items.some(({ per100, grams }) => grams > 0 && per100.leucineG === undefined);
      expect(sumNutrients(items).partly.includes('leucineG')).toBe(missing);
    }),
  );
});
