import { whyRefused } from '@platewright/core/changes/check.ts';
import { readRecord } from '@platewright/core/changes/read.ts';
import { expect, it } from 'vitest';

it('clears a field that may be missing, and no other', () => {
  expect(whyRefused({ kind: 'weigh-in', fields: { note: null } })).toBeNull();
  expect(whyRefused({ kind: 'weigh-in', fields: { kg: null } })).toMatch(/weigh-in\.kg/);
  const fields = { date: '2026-01-01', kg: 80, at: 1, note: null };
  const read = readRecord('weigh-in', { athlete: 'ann', id: 'w', kind: 'weigh-in', fields, clocks: {} });
  expect(read).toEqual({ athlete: 'ann', id: 'w', date: '2026-01-01', kg: 80, at: 1 });
});
