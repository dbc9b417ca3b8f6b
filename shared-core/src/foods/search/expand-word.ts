import type { Findable, FoodIndex } from './food-index.ts';
import { isOneEditFrom } from './one-edit.ts';
import { stem } from './words.ts';

/** A term that a typed word may stand for. */
export interface Expansion {
  term: number;
  quality: number;
}

export const qualities = { whole: 0, begun: 1, misspelt: 2, misspeltBegun: 3 } as const;

/** Shorter words are one edit from too much. */
const shortestMisspelt = 4;
const shortestMisspeltBeginning = 5;

/** The terms that a typed word is, begins or, when asked, misspells; best quality first. */
export function expandWord(index: FoodIndex<Findable>, word: string, misspelt: boolean): Expansion[] {
  const form = stem(word);
  const whole = index.termOf.get(form);
  const found: Expansion[] = whole === undefined ? [] : [{ term: whole, quality: qualities.whole }];
  for (let at = firstNotBefore(index, word); at < index.alphabetical.length; at++) {
    const term = index.alphabetical[at] ?? 0;
    if (!index.terms[term]?.startsWith(word)) break;
    if (term !== whole) found.push({ term, quality: qualities.begun });
  }
  // A number is never a misspelling of another: 93/7 is not 90/10.
  if (!misspelt || word.length < shortestMisspelt || /\d/.test(word)) return found;
  const wholeOnly = form.length < shortestMisspeltBeginning;
  const known = new Set(found.map(({ term }) => term));
  const begun: Expansion[] = [];
  index.terms.forEach((candidate, term) => {
    if (!isOneEditFrom(form, candidate, wholeOnly) || known.has(term)) return;
    if (isOneEditFrom(form, candidate, true)) found.push({ term, quality: qualities.misspelt });
    else begun.push({ term, quality: qualities.misspeltBegun });
  });
  return found.concat(begun);
}

function firstNotBefore(index: FoodIndex<Findable>, word: string): number {
  let low = 0;
  let high = index.alphabetical.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((index.terms[index.alphabetical[middle] ?? 0] ?? '') < word) low = middle + 1;
    else high = middle;
  }
  return low;
}
