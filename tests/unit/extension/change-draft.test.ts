import { expect, it } from 'vitest';
import { changeWords, editedFields } from '../../../extension/options/change-draft.ts';

const fields = { grams: 80, name: 'Oats', per100: { energyKcal: 380 }, removed: false };

it('edits numbers as numbers and text as text, and leaves the rest as it is', () => {
  expect(editedFields(fields, { grams: '82,5', name: 'Rolled oats' })).toEqual({
    ...fields,
    grams: 82.5,
    name: 'Rolled oats',
  });
  expect(editedFields(fields, { grams: 'many' })).toBeNull();
});

it('says a change in one line', () => {
  expect(changeWords('entry', fields)).toBe('entry: grams 80, name Oats');
  expect(changeWords('entry', { removed: true })).toBe('entry: removed');
  // The id of a food and the moment of writing say nothing to a person.
  expect(changeWords('entry', { food: 'starter-15237', name: 'Salmon', at: 1767225600000 })).toBe(
    'entry: name Salmon',
  );
  expect(changeWords('weekly-call', { bodyMassKg: 84.2 })).toBe('weekly-call: body mass kg 84.2');
});
