import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { completionAt, replaceItem } from '@platewright/core/foods/typed-line/complete.ts';
import { formatLine } from '@platewright/core/foods/typed-line/format.ts';
import { parseLine } from '@platewright/core/foods/typed-line/parse.ts';
import { describe, expect, it } from 'vitest';

const larder = { index: indexFoods(starterFoods) };

function foodNamed(name: string) {
  const food = starterFoods.find((candidate) => candidate.name === name);
  if (!food) throw new Error(`No starter food ${name}`);
  return food;
}

/** What a line reads as, in short: `200 g Egg white (6 large)`, or the status of what cannot be logged. */
function read(line: string): string[] {
  return parseLine(line, larder).map((item) => {
    if (item.status === 'ok') {
      return `${item.grams} g ${item.food.name}${item.amount === null ? '' : ` (${item.amount})`}`;
    }
    return 'food' in item ? `${item.status} ${item.food.name}` : item.status;
  });
}

describe('a typed line', () => {
  it('logs several foods at once', () => {
    expect(read('200 chicken, 2 eggs + 6 whites, 80g oats')).toEqual([
      '200 g Chicken breast, roasted',
      '100 g Egg, whole (2 large)',
      '198 g Egg white (6 large)',
      '80 g Oats, rolled',
    ]);
    expect(read('200 chicken;2 eggs\n80g oats,')).toHaveLength(3);
    expect(read('')).toEqual([]);
    expect(read(' , ;; + \n')).toEqual([]);
  });

  it.each([
    // Numbers.
    ['80.5 g oats', '80.5 g Oats, rolled'],
    ['80,5 g oats', '80.5 g Oats, rolled'],
    ['.5 kg oats', '500 g Oats, rolled (0.5 kg)'],
    ['1/2 banana', '59 g Banana (0.5 medium)'],
    ['½ banana', '59 g Banana (0.5 medium)'],
    ['1 1/2 bananas', '177 g Banana (1.5 medium)'],
    ['1½ bananas', '177 g Banana (1.5 medium)'],
    ['1 ½ bananas', '177 g Banana (1.5 medium)'],
    ['1/3 cup oats', '27 g Oats, rolled (1/3 cup)'],
    ['1 1/3 cup oats', '108 g Oats, rolled (1 1/3 cup)'],
    // Units; pounds and ounces as in UCUM, volumes by the food's own measures.
    ['100 gm rice', '100 g White rice, cooked'],
    ['0.25 kg rice', '250 g White rice, cooked (0.25 kg)'],
    ['8 oz chicken', '226.796 g Chicken breast, roasted (8 oz)'],
    ['1 lb chicken', '453.592 g Chicken breast, roasted (1 lb)'],
    ['2 tbsp olive oil', '27 g Olive oil (2 tbsp)'],
    ['2 tsp olive oil', '9 g Olive oil (2 tsp)'],
    ['1 cup rice', '158 g White rice, cooked (1 cup)'],
    ['2 cups of rice', '316 g White rice, cooked (2 cup)'],
    ['8 fl oz milk', '244 g Milk, whole (8 fl oz)'],
    ['8 fl. oz. milk', '244 g Milk, whole (8 fl oz)'],
    ['250 mL milk', '257.832 g Milk, whole (250 mL)'],
    ['0.25 l milk', '257.832 g Milk, whole (0.25 L)'],
    ['1 tsp jam', '6.667 g Jam (1 tsp)'],
    // Portions and pieces.
    ['2 large eggs', '100 g Egg, whole (2 large)'],
    ['2 extra large eggs', '112 g Egg, whole (2 extra large)'],
    ['eggs 2 small', '76 g Egg, whole (2 small)'],
    ['1 slice bread', '32 g Whole-wheat bread (1 slice)'],
    ['2 slices of bread', '64 g Whole-wheat bread (2 slice)'],
    ['2 bread slices', '64 g Whole-wheat bread (2 slice)'],
    ['1 scoop whey', '32 g Whey protein powder (1 scoop)'],
    ['1 can of tuna', '165 g Tuna, light, canned in water (1 can)'],
    ['3 rice cakes', '27 g Rice cake (3 cake)'],
    ['10 almonds', '12 g Almonds (10 almond)'],
    ['30 almonds', '30 g Almonds'],
    ['5 sugar', '5 g Sugar'],
    ['100 banana', '100 g Banana'],
    // Times, and the amount behind.
    ['80g oats x2', '160 g Oats, rolled'],
    ['2 x 80g oats', '160 g Oats, rolled'],
    ['2x eggs', '100 g Egg, whole (2 large)'],
    ['eggs ×3', '150 g Egg, whole (3 large)'],
    ['x2 1 scoop whey', '64 g Whey protein powder (2 scoop)'],
    ['200 x 2 chicken', '400 g Chicken breast, roasted'],
    ['oats 80g', '80 g Oats, rolled'],
    ['chicken 200', '200 g Chicken breast, roasted'],
    ['chicken 200 g grilled', '200 g Chicken breast, grilled'],
    // Numbers that belong to the food.
    ['200 g milk 2%', '200 g Milk, 2 %'],
    ['2% milk 200 mL', '206.266 g Milk, 2 % (200 mL)'],
    ['200 g cooked 93/7 beef', '200 g Ground beef 93/7, cooked'],
    // Numbers as words.
    ['a banana', '118 g Banana (1 medium)'],
    ['half a banana', '59 g Banana (0.5 medium)'],
    ['1/2 a banana', '59 g Banana (0.5 medium)'],
    ['Two eggs', '100 g Egg, whole (2 large)'],
    ['Ten eggs', '500 g Egg, whole (10 large)'],
    ['quarter cup oats', '20.25 g Oats, rolled (0.25 cup)'],
    ['a cup of rice', '158 g White rice, cooked (1 cup)'],
    ['one scoop whey', '32 g Whey protein powder (1 scoop)'],
    ['half a cup of oats', '40.5 g Oats, rolled (0.5 cup)'],
    ['1/2 a cup of oats', '40.5 g Oats, rolled (0.5 cup)'],
    // Where a portion is itself a half, that is what is meant.
    ['half chicken breast', '86 g Chicken breast, roasted (1 half breast)'],
    ['half breast chicken', '86 g Chicken breast, roasted (1 half breast)'],
    ['half fillet salmon', '178 g Salmon, farmed, baked (1 half fillet)'],
    // As lists and packages have it.
    ['chicken (200g)', '200 g Chicken breast, roasted'],
    ['~200g chicken', '200 g Chicken breast, roasted'],
    ['2 dl milk', '206.266 g Milk, whole (2 dL)'],
    ['25cl milk', '257.832 g Milk, whole (25 cL)'],
    ['200g cooked chicken', '200 g Chicken breast, roasted'],
    ['200g cooked turkey', '200 g Turkey breast, roasted'],
    ['100g raw rice', '100 g White rice, dry'],
    ['80g raw pasta', '80 g Pasta, dry'],
    ['150 boiled rice', '150 g White rice, cooked'],
    // Misspelt, half typed, another order, accents.
    ['200 chiken', '200 g Chicken breast, roasted'],
    ['200 hcicken', '200 g Chicken breast, roasted'],
    ['150 swee pot', '150 g Sweet potato, baked'],
    ['200 turky brest', '200 g Turkey breast, roasted'],
    ['100 roasted breast turkey', '100 g Turkey breast, roasted'],
    ['200 g "Chicken breast, raw"', '200 g Chicken breast, raw'],
    ['50 bluebérries', '50 g Blueberries'],
    ['300 POTATOES', '300 g Potato, baked in skin'],
    // What cannot be logged as it stands.
    ['oats', 'needs-amount Oats, rolled'],
    ['200 g', 'needs-food'],
    ['7', 'needs-food'],
    ['200 gruyuzz', 'unknown-food'],
    ['200 beans', '200 g Kidney beans, cooked'],
    ['200 93/7', 'ambiguous'],
    ['0 oats', 'bad-amount Oats, rolled'],
    ['25 kg oats', 'bad-amount Oats, rolled'],
    ['1 cup salmon', 'bad-amount Salmon, farmed, baked'],
    ['2 slabs bread', 'bad-amount Whole-wheat bread'],
  ])('reads %j', (line, expected) => {
    expect(read(line)[0]).toBe(expected);
  });

  it('marks what it cannot read where it stands, says what to do, and keeps the rest', () => {
    const line = '200 chicken, 3 blorks, 1 cup salmon, rice';
    const items = parseLine(line, larder);
    expect(items.map(({ status }) => status)).toEqual(['ok', 'unknown-food', 'bad-amount', 'needs-amount']);
    const [, unknown, unmeasured] = items;
    expect(line.slice(unknown?.start, unknown?.end)).toBe('3 blorks');
    expect(unknown).toMatchObject({
      message: 'No food matches 3 blorks: check the spelling, or add it to the larder.',
    });
    expect(unmeasured).toMatchObject({
      message: expect.stringMatching(/^No volume is known for Salmon.*type grams/),
    });
  });

  it('offers a choice when several foods are meant equally well', () => {
    expect(parseLine('200 ground beef 93/7', larder)).toMatchObject([
      {
        status: 'ambiguous',
        choices: [foodNamed('Ground beef 93/7, raw'), foodNamed('Ground beef 93/7, cooked')],
      },
    ]);
  });

  it.each([
    ['1 coke', 'unknown-food'],
    ['200 fries', 'unknown-food'],
    ['200 chips', 'ambiguous'],
    ['50 toffee', 'ambiguous'],
    ['200 custard', 'ambiguous'],
    ['10 mint', 'ambiguous'],
    ['100 beef', '100 g Sirloin steak, lean, broiled'],
    ['100 beaf', 'ambiguous'],
    ['100 hicken', 'ambiguous'],
    ['ca. 200 g chicken', 'ambiguous'],
    // A vessel is no beginning of a name: candy, canned, barley.
    ['1 can beans', 'bad-amount Kidney beans, cooked'],
    ['200 can beans', 'bad-amount Kidney beans, cooked'],
    ['200 canned kidney beans', '200 g Kidney beans, canned, rinsed'],
  ])('takes no other food for %j unasked', (line, expected) => {
    expect(read(line)[0]).toBe(expected);
  });

  it.each([
    ['200 Chicken breast, raw', ['200 g Chicken breast, raw']],
    [
      '200 g chicken thigh, skinless, raw, 80 oats',
      ['200 g Chicken thigh, skinless, raw', '80 g Oats, rolled'],
    ],
    ['100g rice, dry', ['100 g White rice, dry']],
    ['2 eggs, fried', ['92 g Egg, fried (2 large)']],
    ['200 milk, 2 %', ['200 g Milk, 2 %']],
    // Also where what stands before the comma would mean that food alone.
    ['250 milk, whole, 30 whey', ['250 g Milk, whole', '30 g Whey protein powder']],
    ['80 oats, rolled', ['80 g Oats, rolled']],
    ['2 eggs, whole', ['100 g Egg, whole (2 large)']],
    ['80 oats, milk', ['80 g Oats, rolled', 'needs-amount Milk, whole']],
    ['80 oats, 2 eggs', ['80 g Oats, rolled', '100 g Egg, whole (2 large)']],
    ['80 oats; rolled', ['80 g Oats, rolled', 'needs-amount Oats, rolled']],
  ])('takes %j for names with commas only where they are', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  it('keeps items apart when one is completed, though a food is called by both', () => {
    const own = ['Bar', 'Bar, nut', 'Nut'].map((name) => ({ id: name, name, aliases: [], portions: [] }));
    const barLarder = { index: indexFoods(own) };
    expect(parseLine('60 bar, nut', barLarder)).toMatchObject([{ food: { name: 'Bar, nut' }, grams: 60 }]);
    const bar = own[0] ?? foodNamed('Bar');
    expect(replaceItem('60 ba, nut', 5, bar, barLarder).line).toBe('60 "Bar", nut');
  });

  it('says that no food is called so where it asks about another spelling', () => {
    expect(parseLine('50 toffee', larder)).toMatchObject([
      { choices: [foodNamed('Coffee, black')], message: expect.stringMatching(/^No food is called toffee:/) },
    ]);
  });

  it('lets habit decide between states of a food, and asks when habit points at another kind', () => {
    const dry = foodNamed('White rice, dry');
    const used = (food: { id: string }) => ({ ...larder, usage: new Map([[food.id, 3]]) });
    expect(parseLine('100 white rice', used(dry))).toMatchObject([{ status: 'ok', food: dry }]);
    expect(parseLine('100 rice', used(dry))).toMatchObject([{ status: 'ok', food: dry }]);
    expect(parseLine('100 rice', used(foodNamed('Brown rice, cooked')))).toMatchObject([
      { status: 'ambiguous' },
    ]);
    expect(parseLine('2 eggs', used(foodNamed('Egg white')))).toMatchObject([
      { food: foodNamed('Egg, whole') },
    ]);
  });

  it.each([
    ['14 egg whites', /^14 of Egg white can be grams or pieces: type 14 g or 14 large\.$/],
    ['20 eggs', /type 20 g or 20 large/],
    ['15 strawberries', /type 15 g or 15 medium/],
    ['20 grapes', /type 20 g or 20 grape/],
    ['3 L eggs', /^3 L of Egg, whole can be litres or large: type 3000 mL or 3 large\.$/],
    [
      '1 steak',
      /^Sirloin steak, lean, broiled is not counted in pieces: type 1 g, or how many grams it was\.$/,
    ],
    ['1 1/2 oats', /type one of 1\.5 g, 1\.5 cup\.$/],
    ['2.5 sugar', /type one of 2\.5 g/],
    ['half rice', /^White rice, cooked is not counted in pieces: type one of 0\.5 g, 0\.5 cup\.$/],
    ['2 rice', /not counted in pieces: type one of 2 g, 2 cup\.$/],
  ])('asks whether %j are grams or pieces', (line, message) => {
    expect(parseLine(line, larder)).toMatchObject([
      { status: 'bad-amount', message: expect.stringMatching(message) },
    ]);
  });

  it.each([
    ['12 eggs', '600 g Egg, whole (12 large)'],
    ['40 eggs', '40 g Egg, whole'],
    ['0.5 l egg whites', '513.55 g Egg white (0.5 L)'],
    ['10 raisins', '10 g Raisins'],
    ['14 egg white', '14 g Egg white'],
    ['5 sugar', '5 g Sugar'],
    ['1 g rice', '1 g White rice, cooked'],
  ])('reads the bare number of %j', (line, expected) => {
    expect(read(line)).toEqual([expected]);
  });

  it('says what to type for a portion that is not there', () => {
    const oil = { id: 'oil', name: 'Oil', aliases: [], portions: [] };
    const egg = { ...oil, id: 'egg', name: 'Egg', portions: [{ name: 'large', grams: 50 }] };
    const own = { index: indexFoods([oil, egg]) };
    expect(parseLine('1 slab oil', own)).toMatchObject([
      { message: 'Oil has no portion slab: type grams, or add the food you mean to the larder.' },
    ]);
    expect(parseLine('1 slab egg', own)).toMatchObject([
      {
        message: 'Egg has no portion slab: type one of grams, large, or add the food you mean to the larder.',
      },
    ]);
  });

  it.each([
    [
      '200 chicken 100 rice',
      /^White rice, cooked has no portion chicken 100: put a comma between two foods\.$/,
    ],
    ['200 chicken 2 eggs', /portion chicken 2: put a comma between two foods\.$/],
    ['200g chicken 100g rice', /^No food matches .*: put a comma between two foods, check the spelling,/],
    ['200 zzqx', /^No food matches 200 zzqx: check the spelling,/],
    ['1 bagel with butter', /portion bagel with: put a comma between two foods\.$/],
    ['2 rice cakes & jam', /: put a comma between two foods\.$/],
    ['2-3 eggs', /^No food matches 2-3 eggs: type one amount instead of a range, check/],
    ['2 or 3 eggs', /: type one amount instead of a range\.$/],
    ['rice 200,5 eggs', /: put a blank after a comma between two foods\.$/],
    ['100g sour rice', /^No food matches 100g sour rice: check the spelling,/],
  ])('suggests a comma where %s holds two amounts', (line, message) => {
    expect(parseLine(line, larder)).toMatchObject([{ message: expect.stringMatching(message) }]);
  });

  it('writes names plainly, and quotes those that would read as something else', () => {
    const write = (name: string, amount: string | null = null, grams = 200) =>
      formatLine([{ food: foodNamed(name), grams, amount }], larder);
    expect(write('Chicken breast, roasted')).toBe('200 g Chicken breast roasted');
    expect(write('Egg, whole', '2 large', 100)).toBe('2 large Egg whole');
    const twins = ['Rice, x', 'Rice x'].map((name) => ({ id: name, name, aliases: [], portions: [] }));
    const twinLarder = { index: indexFoods(twins) };
    const line = formatLine(
      twins.map((food) => ({ food, grams: 50, amount: null })),
      twinLarder,
    );
    expect(line).toBe('50 g "Rice, x", 50 g "Rice x"');
    expect(parseLine(line, twinLarder)).toMatchObject(twins.map((food) => ({ status: 'ok', food })));
  });

  it('takes the one that is chosen of two foods of the same name', () => {
    const twins = ['a', 'b'].map((id) => ({ id, name: 'Bar', aliases: [], portions: [] }));
    const own = { index: indexFoods(twins) };
    for (const food of twins) {
      const { line } = replaceItem('60 bar', 6, food, own);
      expect(parseLine(line, own)).toMatchObject([{ status: 'ok', food, grams: 60 }]);
      expect(parseLine(formatLine([{ food, grams: 60, amount: null }], own), own)).toMatchObject([{ food }]);
    }
  });

  it('takes a number word for one only where no food is called so, and not while it is all there is', () => {
    const cream = { id: 'c', name: 'Half and half', aliases: [], portions: [] };
    const own = { index: indexFoods([cream, { ...cream, id: 'd', name: 'Rice' }]) };
    expect(parseLine('half and half', own)).toMatchObject([{ status: 'needs-amount', food: cream }]);
    expect(completionAt('a', 1, larder).foods).not.toEqual([]);
    expect(replaceItem('a ban', 5, foodNamed('Banana'), larder).line).toBe('a Banana');
  });

  it('knows which item is being typed and what it may become', () => {
    const line = '200 chicken, 2 large eg, 80g oats';
    const typed = completionAt(line, line.indexOf('eg,') + 2, larder);
    expect(typed.item).toEqual({ text: '2 large eg', start: 13, end: 23 });
    expect(typed.query).toBe('eg');
    expect(typed.foods[0]).toBe(foodNamed('Egg, whole'));
    expect(completionAt('200 chicken, ', 13, larder)).toEqual({
      item: { text: '', start: 13, end: 13 },
      query: '',
      foods: [],
    });
    expect(completionAt('200 g', 5, larder)).toMatchObject({ query: '', foods: [] });
  });

  it('completes an item and keeps its amount', () => {
    const complete = (line: string, caret: number, name: string) =>
      replaceItem(line, caret, foodNamed(name), larder);
    expect(complete('200 chi, 80g oats', 7, 'Chicken breast, grilled')).toEqual({
      line: '200 Chicken breast grilled, 80g oats',
      caret: 26,
    });
    expect(complete('oats, swee pot 150g', 12, 'Sweet potato, boiled').line).toBe(
      'oats, 150g Sweet potato boiled',
    );
    expect(complete('2 large eg', 10, 'Egg, fried').line).toBe('2 large Egg fried');
    expect(complete('oats, ', 6, 'Banana')).toEqual({ line: 'oats, Banana', caret: 12 });
    expect(complete('oats 80,2', 9, 'Banana').line).toBe('80,2 Banana');
    expect(complete('oats 80,', 8, 'Banana').line).toBe('oats 80,Banana');
    expect(complete(',ban 1', 4, 'Banana').line).toBe(', 1 Banana');
    expect(complete('2 cups of ric', 13, 'Brown rice, cooked').line).toBe('2 cups Brown rice cooked');
  });
});
