import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { expect, it } from 'vitest';
import { logEdits } from '../../daemon/dashboard/pages/today/log-edits.ts';
import { withIds } from '../../daemon/dashboard/state/new-ids.ts';

it('foods of one line on the dashboard are instants apart, so that the day shows them as they were typed', () => {
  const foods = starterFoods.slice(0, 5).map((food) => ({ ...food, athlete: 'anna' }));
  const items = foods.map((food) => ({ food, grams: 50, amount: null }));
  const { edits, back } = logEdits(items, { athlete: 'anna', date: '2026-03-04' }, 2, (entries) =>
    withIds(entries, new Map()),
  );
  const instants = edits.map(({ fields }) => Number(fields.at));
  expect(instants).toEqual(foods.map((_, i) => (instants[0] ?? 0) + i));
  expect(edits.map(({ fields }) => fields.name)).toEqual(foods.map(({ name }) => name));
  expect(back.map(({ id }) => id)).toEqual(edits.map(({ id }) => id));
});
