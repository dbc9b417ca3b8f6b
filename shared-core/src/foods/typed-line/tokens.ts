import { type Amount, matchAt, numberAt } from './number.ts';

/** A piece of an item; `text` is as typed, without the quotes of what was quoted. Only a number or a `x2` is not 0. */
export interface Token extends Amount {
  kind: 'number' | 'times' | 'quoted' | 'word';
  text: string;
  start: number;
  end: number;
}

/** Quoted text stands for itself, separators and all; a quote in it is doubled. A lone inch sign quotes nothing. */
const quoted = /"((?:[^"]|"")+)"(?=\s|$)/y;
const timesBefore = /[x×]\s*(?=[\d.¼-¾⅐-⅞])/iuy;
const timesAfter = /\s*[x×](?!\p{L})/iuy;
const word = /\S+/y;

/** What stands between tokens: blanks, `about` as a sign, and what opens a bracket around an amount. */
const token = /[^\s~≈(]|\((?!\d)/;

/** The tokens of one item of a typed line. */
export function tokensOf(item: string): Token[] {
  const tokens: Token[] = [];
  let at = item.search(token);
  while (at >= 0 && at < item.length) {
    const found = tokenAt(item, at);
    tokens.push(found);
    const next = item.slice(found.end).search(token);
    at = next < 0 ? item.length : found.end + next;
  }
  return tokens;
}

function tokenAt(item: string, start: number): Token {
  const quote = matchAt(quoted, item, start);
  if (quote)
    return {
      kind: 'quoted',
      text: (quote[1] ?? '').replaceAll('""', '"'),
      start,
      end: start + quote[0].length,
      value: 0,
      other: 0,
    };
  const before = matchAt(timesBefore, item, start);
  const number = numberAt(item, before ? start + before[0].length : start);
  if (number) {
    const { value, other } = number;
    const after = before ? null : matchAt(timesAfter, item, number.end);
    const end = number.end + (after ? after[0].length : 0);
    const kind = before || after ? 'times' : 'number';
    return { kind, text: item.slice(start, end), start, end, value, other };
  }
  const text = matchAt(word, item, start)?.[0] ?? item.slice(start);
  return { kind: 'word', text, start, end: start + text.length, value: 0, other: 0 };
}
