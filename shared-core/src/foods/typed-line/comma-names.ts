import { searchFoods } from '../search/search.ts';
import { headOf, stems } from '../search/words.ts';
import { type Edible, interpret, type Larder } from './interpret.ts';
import { itemAt, itemsOf, type Span } from './items.ts';
import { readingsOf } from './readings.ts';
import { tokensOf } from './tokens.ts';

/** The most commas that a name is looked for across. */
const mostCommas = 3;

/**
 * The items of a typed line. Names of the larder have commas, `Chicken breast, raw`, and are typed as they are read: what
 * stands after a comma belongs to the item before it when it only goes on with the name of a food.
 */
export function itemsIn<F extends Edible>(line: string, larder: Larder<F>): Span[] {
  const items: Span[] = [];
  const parts = itemsOf(line);
  for (let at = 0; at < parts.length; ) {
    const taken = partsOfName(line, parts.slice(at, at + 1 + mostCommas), larder);
    const [first, last] = [parts[at], parts[at + taken - 1]];
    if (first && last)
      items.push({ text: line.slice(first.start, last.end), start: first.start, end: last.end });
    at += taken;
  }
  return items;
}

/** The item that a caret stands in; empty where none has been begun. */
export function itemAround<F extends Edible>(line: string, caret: number, larder: Larder<F>): Span {
  return (
    itemsIn(line, larder).find(({ start, end }) => start <= caret && caret <= end) ?? itemAt(line, caret)
  );
}

/** An item's tokens; a comma in a name only separates words. Places stay as they are. */
export function tokensIn(item: string): ReturnType<typeof tokensOf> {
  return tokensOf(item.includes('"') ? item : item.replace(/,(?!\d)/g, ' '));
}

/** How many of the parts are one item, from the first on. */
function partsOfName<F extends Edible>(line: string, parts: readonly Span[], larder: Larder<F>): number {
  const [first] = parts;
  if (!first || first.text.includes('"')) return 1;
  for (let count = parts.length; count > 1; count--) {
    const last = parts[count - 1];
    if (last && goesOn(line.slice(first.start, last.end), first.text, larder)) return count;
  }
  return 1;
}

function goesOn<F extends Edible>(whole: string, first: string, larder: Larder<F>): boolean {
  const tail = whole.slice(first.length);
  // Most tails are items of their own, and their amounts are no words of any name: no need to read on.
  if (/[;+"\n]/.test(tail) || !stems(tail).every((word) => larder.index.termOf.has(word))) return false;
  const named = foodOf(whole, larder);
  if (!named) return false;
  const words = stems(named.name.slice(headOf(named.name).length));
  const isOfName = (text: string) => stems(text).every((word) => words.includes(word));
  // As it is written, a name is one, whatever its words mean by themselves: `Bar, chocolate`.
  if (named.name.length > tail.length && whole.toLowerCase().endsWith(named.name.toLowerCase())) return true;
  return tail
    .split(',')
    .slice(1)
    .every((part) => part.trim() !== '' && isOfName(part) && !isFood(part, larder));
}

function foodOf<F extends Edible>(text: string, larder: Larder<F>): F | undefined {
  return interpret(readingsOf(tokensIn(text)), larder)?.choice.food;
}

/** Whether a food is called just so: `oats, milk` are two. */
function isFood<F extends Edible>(text: string, { index }: Larder<F>): boolean {
  return (searchFoods(index, text, { forgiving: false, limit: 1 })[0]?.level ?? 2) < 2;
}
