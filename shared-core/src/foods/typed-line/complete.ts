import { itemAround, itemsIn, tokensIn } from './comma-names.ts';
import { plainly, quoteFood } from './format.ts';
import { type Edible, type Interpretation, interpret, type Larder } from './interpret.ts';
import type { Span } from './items.ts';
import { readItem } from './parse.ts';
import { isAmountOnly, isOf, type Reading, readingsOf } from './readings.ts';
import type { Token } from './tokens.ts';

/** The item being typed and the foods it may mean. */
export interface Completion<F> {
  item: Span;
  /** What was typed of the food, without its amount; empty when nothing was. */
  query: string;
  /** The likeliest first; none when nothing was typed of the food. */
  foods: readonly F[];
}

/** What a combobox offers at a caret of a typed line. */
export function completionAt<F extends Edible>(
  line: string,
  caret: number,
  larder: Larder<F>,
): Completion<F> {
  const item = itemAround(line, caret, larder);
  const { interpretation } = understand(tokensIn(item.text), larder);
  return { item, query: interpretation?.query ?? '', foods: interpretation?.choice.foods ?? [] };
}

/** The line with the item at the caret completed by a food, its amount kept, and the caret after it. */
export function replaceItem<F extends Edible>(
  line: string,
  caret: number,
  food: F,
  larder: Larder<F>,
): { line: string; caret: number } {
  const item = itemAround(line, caret, larder);
  const tokens = tokensIn(item.text);
  const { reading } = understand(tokens, larder);
  const amount = amountText(item.text, tokens, reading);
  const text = `${amount}${plainly(food.name)}`;
  const plain = putIn(line, item, text);
  const read = readItem(text, larder);
  // Beside its neighbours it may read as another food.
  const stands = itemsIn(plain.line, larder).some((one) => one.end === plain.caret && one.text === text);
  return stands && 'food' in read && read.food.id === food.id
    ? plain
    : putIn(line, item, `${amount}${quoteFood(food, larder)}`);
}

/** The line with a text in place of an item, and the caret after it. */
function putIn(line: string, item: Span, text: string): { line: string; caret: number } {
  // A comma that separated two items must not become a decimal one.
  const before =
    line.slice(0, item.start) + (/^\d/.test(text) && line.slice(0, item.start).endsWith(',') ? ' ' : '');
  const after = (/\d$/.test(text) && /^,\d/.test(line.slice(item.end)) ? ' ' : '') + line.slice(item.end);
  return { line: before + text + after, caret: before.length + text.length };
}

function understand<F extends Edible>(
  tokens: readonly Token[],
  larder: Larder<F>,
): { reading: Reading | undefined; interpretation: Interpretation<F> | undefined } {
  const readings = readingsOf(tokens);
  const interpretation = isAmountOnly(readings) ? undefined : interpret(readings, larder);
  return { reading: interpretation?.reading ?? readings[0], interpretation };
}

/** The amount of an item as it was typed, a blank after it. */
function amountText(text: string, tokens: readonly Token[], reading: Reading | undefined): string {
  if (!reading?.amount) return '';
  const { food, measure } = reading;
  const isIn = (list: readonly Token[], { start }: Token) => list.some((token) => token.start === start);
  // A word that says nothing is kept where it is the amount, `a banana`, or in the name of a portion.
  const isAmount = (token: Token) =>
    !isIn(food, token) &&
    (token === tokens[0] || !isOf(token) || (measure.kind === 'portion' && isIn(measure.words, token)));
  return tokens
    .filter(isAmount)
    .map(({ start, end }, i, all) => text.slice(start, end) + (all[i + 1]?.start === end ? '' : ' '))
    .join('');
}
