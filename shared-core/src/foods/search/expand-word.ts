import type { Findable, FoodIndex } from './food-index.ts';
import { isOneEditFrom } from './one-edit.ts';
import { stem } from './words.ts';

/** A term that a typed word may stand for. */
export interface Expansion {
  term: number;
  quality: number;
}

export const qualities = { whole: 0, begun: 1, misspelt: 2, doubtful: 3 } as const;

/** Shorter forms are one edit from too much: `coke` from `cod`. */
const shortestMisspelt = 4;
/** Shorter ones may be so too (`chips`, `chia`), and so are beginnings of words: what they mean is doubtful. */
const shortestSure = 5;
/** Shorter beginnings are doubtful unless they are still being typed. */
const shortestBegun = 3;

/**
 * The terms that a typed word is, begins or, when asked, misspells; best quality first. The first letter is seldom the
 * wrong one (common practice, no source): `toffee` is rather a food that is not here than coffee, so that is doubtful too.
 */
export function expandWord(
  index: FoodIndex<Findable>,
  word: string,
  { misspelt, last }: { misspelt: boolean; last: boolean },
): Expansion[] {
  const form = stem(word);
  const whole = index.termOf.get(form);
  // Whoever goes on to the next word has mostly typed this one out: `ca. chicken` is not canned chicken.
  const begun = last || word.length >= shortestBegun ? qualities.begun : qualities.doubtful;
  const found: Expansion[] = whole === undefined ? [] : [{ term: whole, quality: qualities.whole }];
  for (let at = firstNotBefore(index, word); at < index.alphabetical.length; at++) {
    const term = index.alphabetical[at] ?? 0;
    if (!index.terms[term]?.startsWith(word)) break;
    if (term !== whole) found.push({ term, quality: begun });
  }
  // A number is never a misspelling of another: 93/7 is not 90/10.
  if (!misspelt || form.length < shortestMisspelt || /\d/.test(word)) return found;
  const wholeOnly = form.length < shortestSure;
  const known = new Set(found.map(({ term }) => term));
  const doubtful: Expansion[] = [];
  index.terms.forEach((candidate, term) => {
    if (!isOneEditFrom(form, candidate, wholeOnly) || known.has(term)) return;
    if (!wholeOnly && beginsAlike(form, candidate) && isOneEditFrom(form, candidate, true)) {
      found.push({ term, quality: qualities.misspelt });
    } else doubtful.push({ term, quality: qualities.doubtful });
  });
  return found.concat(doubtful);
}

/** Whether two words have the same first letter, or the first two swapped. */
function beginsAlike(a: string, b: string): boolean {
  return a[0] === b[0] || (a[0] === b[1] && a[1] === b[0]);
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
