import type { Food } from '../../records/kinds.ts';
import { headOf, stem, words } from './words.ts';

/** What the search has to know of a food. */
export type Findable = Pick<Food, 'id' | 'name' | 'aliases' | 'hidden' | 'removed'>;

/** An inverted index over the words of names and aliases. A term is the stem of a word and goes by its number. */
export interface FoodIndex<F extends Findable> {
  /** Neither hidden nor removed; a food goes by its place here. */
  foods: readonly F[];
  /** Terms of each food's name in order, how many of them are its head, and the terms of each alias. */
  names: readonly (readonly number[])[];
  headLengths: readonly number[];
  aliases: readonly (readonly (readonly number[])[])[];
  terms: readonly string[];
  termOf: ReadonlyMap<string, number>;
  /** Terms in alphabetical order, for beginnings of words. */
  alphabetical: readonly number[];
  /** For each term the foods that have it, in ascending order. */
  postings: readonly (readonly number[])[];
}

/**
 * Builds the index; about a microsecond a food, so a changed larder is simply indexed anew. By id, so that what is found
 * does not depend on the order in which foods come.
 */
export function indexFoods<F extends Findable>(all: readonly F[]): FoodIndex<F> {
  const foods = all.filter((food) => !food.hidden && !food.removed).sort((a, b) => (a.id < b.id ? -1 : 1));
  const terms: string[] = [];
  const postings: number[][] = [];
  const termOf = new Map<string, number>();
  const termOfWord = new Map<string, number>();

  function termFor(word: string): number {
    const known = termOfWord.get(word);
    if (known !== undefined) return known;
    const form = stem(word);
    let term = termOf.get(form);
    if (term === undefined) {
      term = terms.push(form) - 1;
      postings.push([]);
      termOf.set(form, term);
    }
    termOfWord.set(word, term);
    return term;
  }

  function add(text: string, place: number, to: number[]): number[] {
    for (const word of words(text)) {
      const term = termFor(word);
      const foodsOfTerm = postings[term];
      if (foodsOfTerm && foodsOfTerm[foodsOfTerm.length - 1] !== place) foodsOfTerm.push(place);
      to.push(term);
    }
    return to;
  }

  const headLengths: number[] = [];
  const names = foods.map(({ name }, place) => {
    const head = headOf(name);
    const list = add(head, place, []);
    headLengths.push(list.length);
    return add(name.slice(head.length), place, list);
  });
  return {
    foods,
    names,
    headLengths,
    aliases: foods.map(({ aliases }, place) => aliases.map((alias) => add(alias, place, []))),
    terms,
    termOf,
    alphabetical: terms.map((_, term) => term).sort((a, b) => ((terms[a] ?? '') < (terms[b] ?? '') ? -1 : 1)),
    postings,
  };
}

/** The food of exactly this name, of several the first; or else the one with this id. */
export function foodNamed<F extends Findable>(index: FoodIndex<F>, name: string): F | undefined {
  return index.foods.find((food) => food.name === name) ?? index.foods.find((food) => food.id === name);
}
