import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { larderWith, lineLeft, readLine, readyItems } from '@platewright/core/foods/typed-line/read-line.ts';
import { describe, expect, it } from 'vitest';
import { faultyItems, withSuggestion } from '../../../extension/popup/line/read-line.ts';

const foods = [
  { id: 'oats', name: 'Oats, rolled', aliases: [], portions: [] },
  { id: 'egg', name: 'Egg, whole', aliases: ['eggs'], portions: [{ name: 'large', grams: 50 }] },
  { id: 'beef1', name: 'Beef round', aliases: [], portions: [] },
  { id: 'beef2', name: 'Beef chuck', aliases: [], portions: [] },
];
const larder = larderWith(indexFoods(foods), [{ food: 'oats', usage: 1, grams: 75, amount: null }]);

describe('a typed line in the popup', () => {
  it('is ready where it can be read, with the usual amount where none was typed', () => {
    const items = readLine('2 eggs, oats, 50 zzz', larder);
    expect(readyItems(items)).toMatchObject([
      { food: { id: 'egg' }, grams: 100, amount: '2 large' },
      { food: { id: 'oats' }, grams: 75, amount: null },
    ]);
    expect(lineLeft(items)).toBe('50 zzz');
  });

  it.each(['oats, 80g', '80 g, oats', '80 + oats', '2 eggs; 80g; oats'])(
    'takes no usual amount where one stands alone beside it: %s',
    (line) => {
      expect(readyItems(readLine(line, larder)).map(({ food }) => food.id)).not.toContain('oats');
    },
  );

  it('keeps what is ambiguous or has no amount, as it was typed', () => {
    expect(lineLeft(readLine('80 oats, 200 beef + egg', larder))).toBe('200 beef, egg');
  });

  it('marks what can not be read, but not while it is being typed', () => {
    const items = readLine('50 zzz, 80 oats', larder);
    expect(faultyItems(items, 6)).toEqual([]);
    expect(faultyItems(items, 12)).toMatchObject([{ start: 0, end: 6 }]);
    expect(faultyItems(items, null)).toHaveLength(1);
  });

  it('takes a suggestion so that it reads back as the same, and waits for the next', () => {
    const [food] = foods;
    if (food === undefined) throw new Error('no food');
    const line = withSuggestion('2 eggs, ', { food, grams: 75, amount: null }, larder);
    expect(line).toBe('2 eggs, 75 g Oats rolled, ');
    expect(readyItems(readLine(line, larder))).toHaveLength(2);
  });
});
