import { changeSchema } from '@platewright/core/changes/change.ts';
import { whyRefused } from '@platewright/core/changes/check.ts';
import { applyChange } from '@platewright/core/changes/merge.ts';
import { expect, it } from 'vitest';

it('takes a field that is named like a member of every object for a field', () => {
  const change = changeSchema.parse({
    id: 'c',
    athlete: 'ann',
    device: 'phone',
    clock: '000000000000-0000-phone',
    kind: 'day',
    record: 'r',
    fields: { constructor: 1, toString: 2 },
  });
  expect(whyRefused(change)).toBeNull();
  const record = applyChange(undefined, change);
  const later = { ...change, clock: '000000000001-0000-phone', fields: { constructor: 3, valueOf: 4 } };
  expect(applyChange(record, later).fields).toEqual({ constructor: 3, toString: 2, valueOf: 4 });
});
