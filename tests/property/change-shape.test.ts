import { changeSchema, isChange } from '@platewright/core/changes/change.ts';
import {
  isPushRequest,
  MAX_PUSH,
  pulledSchema,
  pullResponseSchema,
  pushRequestSchema,
} from '@platewright/core/protocol/sync.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';

const whole = {
  id: 'c1',
  athlete: 'ann',
  device: 'phone',
  clock: '018bcfe5680a-0000-phone',
  kind: 'entry',
  record: 'e-1',
  fields: { date: '2026-03-02', per100: { energyKcal: 165 }, tags: ['a', null] },
};

/** What may stand in one place of a change, good or bad. */
const odd = fc.oneof(
  fc.constantFrom('', 'ok', 'Ok-1', '-x', 'a b', 'x'.repeat(61), 'x'.repeat(65), null, undefined, [], {}),
  fc.constantFrom(
    { '': 1 },
    { ['f'.repeat(61)]: 1 },
    { a: Number.NaN },
    { a: undefined },
    { a: new Date(0) },
  ),
  fc.constant(JSON.parse('{"__proto__": 1, "a": 2}')),
  fc.jsonValue(),
);

const nearly = fc
  .tuple(fc.constantFrom(...Object.keys(whole), 'more'), fc.option(odd, { nil: undefined }))
  .map(([name, value]) => ({ ...whole, [name]: value }));

it('takes a change as it is only when the schema gives it back the same', () => {
  expect(isChange(whole)).toBe(true);
  fc.assert(
    fc.property(fc.oneof(nearly, odd), (value) => {
      const parsed = changeSchema.safeParse(value);
      if (isChange(value)) expect(parsed.data).toStrictEqual(value);
    }),
    { numRuns: 3000 },
  );
});

it('takes a push as it is only when the schema gives it back the same', () => {
  const many = Array.from({ length: MAX_PUSH + 1 }, () => whole);
  expect(isPushRequest({ changes: many.slice(1) })).toBe(true);
  for (const value of [{ changes: many }, { changes: [whole], more: 1 }, { changes: {} }, [], null]) {
    expect(isPushRequest(value)).toBe(false);
  }
  expect(pushRequestSchema.safeParse({ changes: many }).success).toBe(false);
});

it('reads a page that was pulled as its schema does, plain changes or not', () => {
  const head = {
    store: 's',
    protocol: 1,
    now: 1,
    rights: { athlete: null, access: 'read' },
    seq: 1,
    mark: 'm',
  };
  fc.assert(
    fc.property(fc.array(fc.oneof(fc.constant(whole), nearly), { maxLength: 3 }), (changes) => {
      const page = { ...head, changes, more: false };
      expect(pulledSchema.safeParse(page).data).toStrictEqual(pullResponseSchema.safeParse(page).data);
    }),
    { numRuns: 1000 },
  );
  const newer = { ...head, changes: [{ ...whole, more: 1 }], more: false };
  expect(pulledSchema.parse(newer)).toMatchObject({ changes: [whole] });
});
