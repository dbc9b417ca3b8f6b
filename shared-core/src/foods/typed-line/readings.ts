import type { Amount } from './number.ts';
import type { Token } from './tokens.ts';
import { leadingUnit, type Unit } from './units.ts';

/** One way to read an item: how much, in what, of which food. */
export interface Reading {
  /** Null when no amount was typed. */
  amount: Amount | null;
  measure: { kind: 'unit'; unit: Unit } | { kind: 'portion'; words: readonly Token[] } | { kind: 'count' };
  food: readonly Token[];
}

/** Longest portion name that is looked for, in words. */
const longestPortion = 3;
const numberWords: ReadonlyMap<string, number> = new Map([
  ['quarter', 0.25],
  ['half', 0.5],
  ['a', 1],
  ['an', 1],
  ['one', 1],
  ['two', 2],
  ['three', 3],
  ['four', 4],
  ['five', 5],
  ['six', 6],
  ['seven', 7],
  ['eight', 8],
  ['nine', 9],
  ['ten', 10],
  ['eleven', 11],
  ['twelve', 12],
]);
/** An item with more numbers is no item of food. */
const mostNumbers = 3;

/**
 * All ways to read an item, the likeliest first: a number with a unit, a bare number, a number with a portion beside it or
 * at the end, no amount at all. The number may stand anywhere. Which one is meant only the larder can tell.
 */
export function readingsOf(tokens: readonly Token[]): Reading[] {
  const { rest, times } = takeTimes(tokens);
  const numbers = rest.flatMap((token, at) => (token.kind === 'number' ? [at] : [])).slice(0, mostNumbers);
  const around = numbers.flatMap((at) => readingsAround(rest, at, times));
  const order = ['unit', 'count', 'portion'];
  return [
    ...around.sort((a, b) => order.indexOf(a.measure.kind) - order.indexOf(b.measure.kind)),
    { amount: null, measure: { kind: 'count' }, food: tokens },
    ...(numbers.length === 0 ? inWords(tokens) : []),
  ];
}

/** The readings of an item that begins with a number in words: `half a banana`. Alone, such a word may begin a food. */
function inWords(tokens: readonly Token[]): Reading[] {
  const [first, ...rest] = tokens;
  const value = first && rest.length > 0 ? numberWords.get(first.text.toLowerCase()) : undefined;
  if (!first || value === undefined) return [];
  const number = { ...first, kind: 'number' } as const;
  // `half breast chicken` is not half of a half breast, where a portion is called so.
  const one = value === 0.5 ? readingsOf([{ ...number, value: 1, other: 1 }, ...tokens]) : [];
  return [
    ...one.filter(({ measure }) => measure.kind === 'portion' && measure.words[0] === first),
    ...readingsOf([{ ...number, value, other: value }, ...rest]).filter((reading) => reading.amount !== null),
  ];
}

function readingsAround(tokens: readonly Token[], at: number, times: Amount): Reading[] {
  const { value = 0, other = 0 } = tokens[at] ?? {};
  const amount = { value: value * times.value, other: other * times.other };
  const before = tokens.slice(0, at);
  const after = withoutOf(tokens.slice(at + 1));
  const foodWith = (following: readonly Token[]) => [...before, ...withoutOf(following)];
  const readings: Reading[] = [{ amount, measure: { kind: 'count' }, food: foodWith(after) }];
  const leading = leadingUnit(after.map(({ kind, text }) => (kind === 'word' ? text : '')));
  if (leading) {
    const { unit, length } = leading;
    readings.push({ amount, measure: { kind: 'unit', unit }, food: foodWith(after.slice(length)) });
  }
  for (let length = 1; length <= Math.min(longestPortion, tokens.length - 2, after.length); length++) {
    for (const [words, food] of [
      [after.slice(0, length), foodWith(after.slice(length))],
      [after.slice(-length), foodWith(after.slice(0, -length))],
    ] as const) {
      const named = words.some(({ kind }) => kind !== 'number');
      if (named && food.length > 0) readings.push({ amount, measure: { kind: 'portion', words }, food });
    }
  }
  return readings;
}

/** Whether an amount stands alone, its food still to come: `200 g` is no 200 of a food that begins with g. */
export function isAmountOnly(readings: readonly Reading[]): boolean {
  return readings.some(({ amount, food }) => amount !== null && food.length === 0);
}

/** Takes every `x2` out; where no other number is left, the first of them is the number: `2x eggs`. */
function takeTimes(tokens: readonly Token[]): { rest: Token[]; times: Amount } {
  let counted = tokens.some(({ kind }) => kind === 'number');
  const times = { value: 1, other: 1 };
  const rest: Token[] = [];
  for (const token of tokens) {
    if (token.kind !== 'times') rest.push(token);
    else if (counted) {
      times.value *= token.value;
      times.other *= token.other;
    } else {
      rest.push({ ...token, kind: 'number' });
      counted = true;
    }
  }
  return { rest, times };
}

/** `2 cups of rice` is 2 cups rice, and `half a cup` half cup. */
function withoutOf(tokens: readonly Token[]): readonly Token[] {
  return tokens[0] && isOf(tokens[0]) ? tokens.slice(1) : tokens;
}

/** A word between amount and food that says nothing. */
export function isOf({ kind, text }: Token): boolean {
  return kind === 'word' && /^(?:of|an?)$/i.test(text);
}
