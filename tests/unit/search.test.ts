import { chooseFood } from '@platewright/core/foods/search/choose.ts';
import { type Findable, indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { searchFoods, type Usage } from '@platewright/core/foods/search/search.ts';
import { stem, words } from '@platewright/core/foods/search/words.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { describe, expect, it } from 'vitest';

const starter = indexFoods(starterFoods);

function larderOf(...names: string[]) {
  return indexFoods(
    names.map((text): Findable => {
      const [name = '', ...aliases] = text.split('|');
      return { id: name, name, aliases };
    }),
  );
}

function names(query: string, index = starter as ReturnType<typeof larderOf>, usage?: Usage): string[] {
  return searchFoods(index, query, { usage }).map(({ food }) => food.name);
}

describe('words', () => {
  it('takes off case, accents and apostrophes, and cuts at what is neither letter nor digit', () => {
    expect(words("Crème fraîche, Hershey's 93/7 (2%)")).toEqual([
      'creme',
      'fraiche',
      'hersheys',
      '93',
      '7',
      '2',
    ]);
    expect(words('Smørrebrød Œuf Straße')).toEqual(['smorrebrod', 'oeuf', 'strasse']);
    expect(words('卵 яйцо')).toEqual(['卵', 'яицо']);
  });

  it.each([
    ['egg', 'eggs'],
    ['white', 'whites'],
    ['berry', 'berries'],
    ['potato', 'potatoes'],
    ['cookie', 'cookies'],
    ['peach', 'peaches'],
    ['glass', 'glasses'],
    ['pea', 'peas'],
    ['turkey', 'turkeys'],
    ['slice', 'slices'],
  ])('has one form for %s and %s', (singular, plural) => {
    expect(stem(plural)).toBe(stem(singular));
  });

  it('keeps apart what is not the same', () => {
    expect(
      new Set(['pie', 'pea', 'pear', 'bean', 'beet', 'beef', 'rice', 'rye', 'glass'].map(stem)).size,
    ).toBe(9);
  });
});

describe('search', () => {
  it('finds words in any order, whole or half typed', () => {
    expect(names('breast roasted chicken')[0]).toBe('Chicken breast, roasted');
    expect(names('roa chick')).toContain('Chicken breast, roasted');
    expect(names('swee pot')[0]).toBe('Sweet potato, baked');
    expect(names('blueb')).toEqual(['Blueberries']);
    expect(names('chicken banana')).toEqual([]);
    expect(names(' , ')).toEqual([]);
  });

  it.each(['chiken', 'chickn', 'chhicken', 'chivken', 'hcicken', 'vhicken', 'chcken'])(
    'finds chicken typed as %s',
    (typed) => {
      expect(names(typed)[0]).toBe('Chicken breast, roasted');
      expect(searchFoods(starter, typed, { forgiving: false })).toEqual([]);
    },
  );

  it('takes no number for a misspelt one', () => {
    expect(names('beef 9313')).toEqual([]);
  });

  it('puts the exact name before an alias, before what stands before the comma, before parts', () => {
    const index = larderOf('Toast with egg', 'Egg, fried', 'Omelette|egg', 'Egg');
    expect(names('egg', index)).toEqual(['Egg', 'Omelette', 'Egg, fried', 'Toast with egg']);
    expect(names('eggs', index)[0]).toBe('Egg');
  });

  it('puts whole words before half typed ones, and the shorter name first', () => {
    const index = larderOf('Hamburger', 'Pork and ham pie', 'Pork ham');
    expect(names('ham', index)).toEqual(['Pork ham', 'Pork and ham pie', 'Hamburger']);
  });

  it('puts the more eaten food first among equals', () => {
    const index = larderOf('Bread, rye', 'Bread, white', 'Bread, corn');
    expect(names('bread', index, new Map([['Bread, white', 2]]))[0]).toBe('Bread, white');
  });

  it('does not offer what is hidden or removed', () => {
    const index = indexFoods<Findable>([
      { id: 'a', name: 'Rice, old', aliases: [], hidden: true },
      { id: 'b', name: 'Rice, older', aliases: [], removed: true },
    ]);
    expect(names('rice', index)).toEqual([]);
  });

  it('finds every starter food first by its name and by each of its other words', () => {
    for (const food of starterFoods) {
      for (const called of [food.name, ...food.aliases]) {
        expect(names(called)[0], called).toBe(food.name);
        expect(chooseFood(called, searchFoods(starter, called)).food?.name, called).toBe(food.name);
      }
    }
  });
});

describe('the choice between matches', () => {
  const rice = larderOf('Rice, raw', 'Rice, cooked');
  const choose = (query: string, index: ReturnType<typeof larderOf>, usage: Record<string, number> = {}) =>
    chooseFood(query, searchFoods(index, query, { usage: new Map(Object.entries(usage)) }));

  it('is open between raw and cooked without history', () => {
    expect(choose('rice', rice).food).toBeUndefined();
    expect(choose('rice', rice).foods).toHaveLength(2);
    expect(choose('rice cooked', rice).food?.name).toBe('Rice, cooked');
  });

  it('is made by habit when it is clear', () => {
    expect(choose('rice', rice, { 'Rice, raw': 1 }).food?.name).toBe('Rice, raw');
    expect(choose('rice', rice, { 'Rice, raw': 8, 'Rice, cooked': 2 }).food?.name).toBe('Rice, raw');
    expect(choose('rice', rice, { 'Rice, raw': 8, 'Rice, cooked': 5 }).food).toBeUndefined();
    expect(choose('ric', rice, { 'Rice, raw': 1 }).food?.name).toBe('Rice, raw');
  });

  it('lets another state of a food overrule the owner of the word, another kind not', () => {
    const index = larderOf('White rice, cooked|rice', 'White rice, dry', 'Brown rice, dry', 'Rice pudding');
    expect(choose('rice', index).food?.name).toBe('White rice, cooked');
    expect(choose('rice', index, { 'White rice, dry': 3 }).food?.name).toBe('White rice, dry');
    expect(choose('rice', index, { 'White rice, dry': 3, 'White rice, cooked': 2 }).food).toBeUndefined();
    expect(choose('rice', index, { 'Brown rice, dry': 3 })).toMatchObject({
      food: undefined,
      foods: [{ name: 'Brown rice, dry' }, { name: 'White rice, cooked' }, {}, {}],
    });
    expect(choose('rice', index, { 'Brown rice, dry': 3, 'White rice, cooked': 1 }).food?.name).toBe(
      'White rice, cooked',
    );
    expect(choose('rice', index, { 'Rice pudding': 3 }).food?.name).toBe('White rice, cooked');
  });

  it('is nothing when nothing matches', () => {
    expect(choose('beans', rice)).toMatchObject({ food: undefined, foods: [] });
  });
});
