import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { parseLine } from '@platewright/core/foods/typed-line/parse.ts';
import { describe, expect, it } from 'vitest';

const larder = { index: indexFoods(starterFoods) };

/** What each item of a line reads as: grams, or what is asked. */
function read(line: string): (number | string)[] {
  return parseLine(line, larder).map((item) => (item.status === 'ok' ? item.grams : item.message));
}

describe('an amount that can be read in two ways', () => {
  it.each([
    ['1,500 g rice', 'type 1500 or 1.5.'],
    ['1.500 g rice', 'type 1500 or 1.5.'],
    ['1.500 rice', 'type 1500 or 1.5.'],
    ['1.000 rice', 'type 1000 or 1.'],
    [',5 rice', 'type 5 or 0.5.'],
    [',14 egg whites', 'type 14 or 0.14.'],
    ['rice 10.500 g', 'type 10500 or 10.5.'],
    ['2 x 1.500 g rice', 'type 3000 or 3.'],
    [',5 egg', 'type 5 or 0.5.'],
    [',500 g rice', 'type 500 or 0.5.'],
    ['200 rice, ,5 egg', 'type 5 or 0.5.'],
    ['1 500 g rice', '1 500 can be several amounts: type 1500, 1 x 500, or put a comma between two foods.'],
    ['1 500 g milk', 'type 1500, 1 x 500, or'],
    ['milk 1 200 ml', 'type 1200, 1 x 200, or'],
  ])('is asked about in %j', (line, asked) => {
    expect(read(line).at(-1)).toContain(asked);
  });

  it.each([
    ['1.500 kg rice', [1500]],
    ['1,500 kg rice', [1500]],
    ['0,500 kg rice', [500]],
    ['83.125 g rice', [83.125]],
    ['1,333 cup rice', [210.614]],
    ['1.50 egg', [75]],
    ['1,5 egg', [75]],
    ['200 rice,5 eggs', [200, 250]],
    ['200 rice, 5 eggs', [200, 250]],
    ['200 rice ,5 eggs', [200, 250]],
    ['1500,5 g rice', [1500.5]],
  ])('is read as %j where only one can be meant', (line, grams) => {
    expect(read(line)).toEqual(grams);
  });
});
