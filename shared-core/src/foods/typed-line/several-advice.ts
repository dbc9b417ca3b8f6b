import type { Token } from './tokens.ts';

/** What to ask where a blank stands in a number, or an `x` is missing: `1 500`. Undefined where none does. */
export function askOfParted(tokens: readonly Token[]): string | undefined {
  for (const [i, { kind, text }] of tokens.entries()) {
    const next = tokens[i + 1];
    if (kind !== 'number' || next?.kind !== 'number') continue;
    if (!/^\d{1,3}$/.test(text) || !/^\d{3}$/.test(next.text)) continue;
    const [whole, times] = [`${text}${next.text}`, `${text} x ${next.text}`];
    return `${text} ${next.text} can be several amounts: type ${whole}, ${times}, or put a comma between two foods.`;
  }
  return undefined;
}

/** What to do about several numbers or foods in an item that can't be read; empty where they are not what is wrong. */
export function severalAdvice(tokens: readonly Token[]): string {
  const typed = tokens.map(({ text }) => text).join(' ');
  if (/\d\s*[-–]\s*\d|\d\s+(?:or|to)\s+\d/.test(typed)) return 'type one amount instead of a range';
  const numbers = tokens.filter(({ kind }) => kind === 'number');
  if (numbers.some(({ text }) => text.includes(','))) return 'put a blank after a comma between two foods';
  const joins = /\s(?:and|with|w\/|&)\s/i.test(typed);
  return joins || numbers.length > 1 ? 'put a comma between two foods' : '';
}
