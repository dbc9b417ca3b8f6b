import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { starterFoods } from '@platewright/core/foods/starter/index.ts';
import { completionAt, replaceItem } from '@platewright/core/foods/typed-line/complete.ts';
import { formatLine } from '@platewright/core/foods/typed-line/format.ts';
import type { Edible, Larder } from '@platewright/core/foods/typed-line/interpret.ts';
import { parseLine } from '@platewright/core/foods/typed-line/parse.ts';
import { weigh } from '@platewright/core/foods/typed-line/weigh.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const starter = { index: indexFoods(starterFoods) };

/** Pieces that mean something in a typed line, so that names and lines are as hostile as they can be. */
const piece = fc.constantFrom(
  ...[
    'egg',
    'eggs',
    'rice',
    'Crème',
    'large',
    'slice',
    'g',
    'kg',
    'cup',
    'fl',
    'oz',
    'of',
    'x2',
    '2x',
    'x',
    '×',
  ],
  ...[
    '2',
    '1,5',
    '1,500',
    '1.500',
    ',5',
    '1 500',
    '1/2',
    '½',
    '2½',
    '93/7',
    '2 %',
    '.',
    ',',
    ';',
    '+',
    '\n',
    '"',
    '""',
    "'",
    '(',
    ')',
    '-',
  ],
);
const hostile = fc
  .array(fc.tuple(fc.oneof(piece, fc.string({ unit: 'grapheme', maxLength: 6 })), fc.constantFrom('', ' ')))
  .map((parts) => parts.map(([text, gap]) => text + gap).join(''));
const name = hostile.map((text) => text.trim().slice(0, 120).trim()).filter((text) => text !== '');

const food = fc.record({
  name,
  aliases: fc.array(name, { maxLength: 2 }),
  portions: fc.uniqueArray(fc.record({ name, grams: fc.double({ min: 0.5, max: 500, noNaN: true }) }), {
    maxLength: 3,
    selector: (portion) => portion.name,
  }),
});
const foods = fc
  // Two of the same name, too.
  .tuple(fc.array(food, { minLength: 1, maxLength: 5 }), fc.boolean())
  .map(([list, twins]) => (twins ? [...list, ...list] : list))
  .map((list) => list.map((one, i): Edible => ({ ...one, id: `food-${i}` })));

const value = fc.oneof(
  fc.integer({ min: 1, max: 400 }),
  fc.integer({ min: 1, max: 40_000 }).map((thousandths) => thousandths / 1000),
  fc
    .tuple(fc.nat({ max: 5 }), fc.constantFrom(1 / 3, 2 / 3, 1 / 8, 5 / 6))
    .map(([whole, part]) => whole + part),
);

/** Items as they can be logged: of a food, so many of a unit or of a portion of it. */
const logged = foods.chain((list) =>
  fc.record({
    list: fc.constant(list),
    items: fc.array(
      fc
        .record({
          at: fc.nat(),
          value,
          measure: fc.constantFrom('g', 'kg', 'oz', 'mL', 'cup', 'portion'),
          portion: fc.nat(),
        })
        .map(({ at, value, measure, portion: which }) => {
          const of = list[at % list.length] ?? raise();
          const portion = of.portions[which % Math.max(1, of.portions.length)];
          const weighed = weigh(
            of,
            value,
            measure !== 'portion' || !portion
              ? { kind: 'unit', unit: measure === 'portion' ? 'g' : measure }
              : { kind: 'portion', portion },
          );
          return typeof weighed === 'string' ? null : { food: of, ...weighed };
        }),
      { minLength: 1, maxLength: 4 },
    ),
  }),
);

function raise(): never {
  throw new Error('no food');
}

describe('the typed line', () => {
  it('reads back what it writes, whatever foods and portions are called', () => {
    fc.assert(
      fc.property(logged, ({ list, items }) => {
        const larder: Larder<Edible> = { index: indexFoods(list) };
        const kept = items.filter((item) => item !== null);
        const read = parseLine(formatLine(kept, larder), larder);
        expect(read.map((item) => (item.status === 'ok' ? item.food.id : item.message))).toEqual(
          kept.map((item) => item.food.id),
        );
        read.forEach((item, i) => {
          expect(item).toMatchObject({ grams: kept[i]?.grams, amount: kept[i]?.amount });
        });
      }),
      { numRuns: 500 },
    );
  });

  it('reads back every starter food in plain words', () => {
    for (const food of starterFoods) {
      const line = formatLine([{ food, grams: 200, amount: null }], starter);
      expect(line).not.toContain('"');
      expect(parseLine(line, starter)).toMatchObject([{ status: 'ok', food, grams: 200, amount: null }]);
    }
  });

  it('never throws, and keeps every character: what is outside of the items only separates', () => {
    fc.assert(
      fc.property(fc.oneof(hostile, fc.string({ unit: 'binary', maxLength: 60 })), (line) => {
        let end = 0;
        for (const item of parseLine(line, starter)) {
          expect(line.slice(end, item.start)).toMatch(/^[\s,;+]*$/);
          expect(line.slice(item.start, item.end)).toBe(item.text);
          expect(item.text).not.toBe('');
          end = item.end;
        }
        expect(line.slice(end)).toMatch(/^[\s,;+]*$/);
      }),
      { numRuns: 500 },
    );
  });

  it('completes the item at the caret and leaves the others alone', () => {
    fc.assert(
      fc.property(hostile, fc.nat(), foods, fc.nat(), (line, at, list, which) => {
        const larder: Larder<Edible> = { index: indexFoods(list) };
        const caret = at % (line.length + 1);
        const food = list[which % list.length] ?? raise();
        // A lone quote in the line would pair with one before a separator; no food is called so.
        fc.pre(!line.includes('"') || !/^[,;+]/.test(food.name));
        const before = parseLine(line, larder);
        const { item } = completionAt(line, caret, larder);
        const replaced = replaceItem(line, caret, food, larder);
        const after = parseLine(replaced.line, larder);
        const completed = after.find(({ end }) => end === replaced.caret);
        expect(completed).toMatchObject({ food: { id: food.id } });
        const others = before.filter(({ start }) => start !== item.start).map(({ text }) => text);
        expect(after.filter((one) => one !== completed).map(({ text }) => text)).toEqual(others);
      }),
      { numRuns: 500 },
    );
  });
});
