import type { Json } from '@platewright/core/changes/change.ts';
import { whyRefused } from '@platewright/core/changes/check.ts';
import { isKind, type Kind, kinds } from '@platewright/core/records/kinds.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type * as z from 'zod/mini';
import { takesAll } from '../../daemon/src/store/takes-all.ts';

/** Values that some field of some kind takes, and values that none does. */
const values: Json[] = [
  ...[null, true, -1, 0, 1, 3, 7.5, 80, 150, 1e9, '', ' a ', 'x'.repeat(121), '2026-02-29'],
  ...['2026-03-02', 'starter-05064', 'Oats', 'entry', 'female', 'kg', 'kcal', 'Europe/Lisbon'],
  ...[[], ['kidney'], {}, { chest: 9 }, { kind: 'weekdays', days: [1, 3, 5] }],
  { energyKcal: 1, proteinG: 1, carbohydrateG: 1, fatG: 1 },
  { energyKcal: 1, proteinG: -1, carbohydrateG: 1, fatG: 1 },
  [{ food: 'starter-05064', grams: 40 }],
];
const value = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(...values) },
  fc.json().map((text): Json => JSON.parse(text)),
);

function fieldsOf(kind: Kind): fc.Arbitrary<Record<string, Json>> {
  return fc.dictionary(fc.constantFrom(...Object.keys(kinds[kind].shape), 'unheard', 'constructor'), value, {
    maxKeys: 3,
  });
}

/** Whether each field that the kind knows takes its value; null stands for a field that is cleared. */
function areGood(kind: Kind, fields: Record<string, Json>): boolean {
  const shape: Record<string, z.ZodMiniType> = kinds[kind].shape;
  return Object.entries(fields).every(([name, one]) => {
    const schema = Object.hasOwn(shape, name) ? shape[name] : undefined;
    return schema === undefined || schema.safeParse(one === null ? undefined : one).success;
  });
}

it('finds fields together as good as their schemas find them one by one', () => {
  const count = { good: 0, bad: 0 };
  for (const kind of Object.keys(kinds).filter(isKind)) {
    fc.assert(
      fc.property(fieldsOf(kind), (fields) => {
        const good = areGood(kind, fields);
        expect(whyRefused({ kind, fields }) === null).toBe(good);
        // May send good ones on to the look at each, which is only slower; never the other way round.
        if (!good) expect(takesAll({ kind, fields })).toBe(false);
        if (Object.keys(fields).length > 1) count[good ? 'good' : 'bad'] += 1;
      }),
      { numRuns: 1000, seed: 20260302 },
    );
  }
  expect(Math.min(count.good, count.bad)).toBeGreaterThan(200);
});
