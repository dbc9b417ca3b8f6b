import type { Change } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const field = fc.constantFrom('grams', 'meal', 'name', 'removed');

const value = fc.oneof(
  fc.integer({ min: 0, max: 9 }),
  fc.boolean(),
  fc.constant(null),
  fc.constantFrom({ a: 1, b: 2 }, { b: 2, a: 1 }, { a: 1 }),
);

/** Changes of one record by a few devices; some under one clock, as copies of a profile make them. */
const history = fc
  .array(
    fc.record({
      ms: fc.integer({ min: 0, max: 3 }),
      counter: fc.integer({ min: 0, max: 1 }),
      device: fc.constantFrom('a', 'b'),
      fields: fc.dictionary(field, value),
    }),
    { maxLength: 12 },
  )
  .map((edits) =>
    edits.map(
      ({ ms, counter, device, fields }, i): Change => ({
        id: `change-${i}`,
        athlete: 'athlete-1',
        device,
        clock: formatClock(ms, counter, device),
        kind: 'entry',
        record: 'entry-1',
        fields: { ...fields },
      }),
    ),
  );

function merged(changes: readonly Change[]): StoredRecord | undefined {
  return changes.reduce<StoredRecord | undefined>(applyChange, undefined);
}

describe('merge of changes', () => {
  it('is commutative and associative: any order gives the same record', () => {
    const shuffled = history.chain((changes) =>
      fc.tuple(
        fc.constant(changes),
        fc.shuffledSubarray(changes, { minLength: changes.length, maxLength: changes.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([changes, other]) => {
        expect(merged(other)).toEqual(merged(changes));
      }),
      { numRuns: 500 },
    );
  });

  it('is idempotent: a change that comes again changes nothing, and gives the very record back', () => {
    fc.assert(
      fc.property(history, fc.nat(), (changes, pick) => {
        const record = merged(changes);
        const again = changes[pick % Math.max(1, changes.length)];
        if (record === undefined || again === undefined) return;
        expect(applyChange(record, again)).toBe(record);
      }),
    );
  });

  it('keeps for each field what the latest clock wrote', () => {
    fc.assert(
      fc.property(history, (changes) => {
        const record = merged(changes);
        for (const name of ['grams', 'meal', 'name', 'removed']) {
          const writers = changes.filter((change) => Object.hasOwn(change.fields, name));
          const latest = writers
            .map(({ clock }) => clock)
            .toSorted()
            .at(-1);
          const last = writers.filter(({ clock }) => clock === latest).map(({ fields }) => fields[name]);
          expect(record?.clocks[name]).toBe(latest);
          if (latest !== undefined) expect(last).toContainEqual(record?.fields[name]);
        }
      }),
    );
  });

  it('undoes a removal by a later change, like any other field', () => {
    const change = (ms: number, removed: boolean): Change => ({
      id: `c${ms}`,
      athlete: 'athlete-1',
      device: 'a',
      clock: formatClock(ms, 0, 'a'),
      kind: 'entry',
      record: 'entry-1',
      fields: { removed },
    });
    expect(merged([change(2, false), change(1, true)])?.fields.removed).toBe(false);
    expect(merged([change(1, false), change(2, true)])?.fields.removed).toBe(true);
  });
});
