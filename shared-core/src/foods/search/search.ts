import { type Expansion, expandWord, qualities } from './expand-word.ts';
import type { Findable, FoodIndex } from './food-index.ts';
import { words } from './words.ts';

/** How often an athlete eats each food, by id, in any unit: only its ratios count. See `usageOf`. */
export type Usage = ReadonlyMap<string, number>;

export interface Match<F> {
  food: F;
  /** 0 the whole name; 1 an alias or all that stands before the comma; 2 part of it or half typed; 3 misspelt. */
  level: number;
  /** Of the worst word: 0 whole; 1 half typed; 2 misspelt; 3 doubtful, see `expandWord`. */
  quality: number;
  /** What was typed is 0 the name, 1 an alias, 2 what stands before the comma, 3 that and more, 4 something else of it. */
  cover: number;
  usage: number;
}

export interface SearchOptions {
  usage?: Usage | undefined;
  /** 8 unless told. */
  limit?: number;
  /** Let one edit a word pass when nothing else is found; true unless told. */
  forgiving?: boolean;
}

const covers = { name: 0, alias: 1, head: 2, more: 3, other: 4 } as const;
/** Words are bits of a number in `coverOf`; nobody types more. */
const mostWords = 30;

/**
 * The foods that have all words of a query, in any order, each whole or half typed; best first. Before all goes the food
 * of just this name, then its aliases and what stands before the comma of a name, then parts of names. Within these the
 * more eaten food goes first, then the shorter name.
 */
export function searchFoods<F extends Findable>(
  index: FoodIndex<F>,
  query: string,
  options: SearchOptions = {},
): Match<F>[] {
  const typed = words(query);
  if (typed.length === 0 || typed.length > mostWords) return [];
  const strict = findAll(index, typed, false, options);
  return strict.length > 0 || options.forgiving === false ? strict : findAll(index, typed, true, options);
}

function findAll<F extends Findable>(
  index: FoodIndex<F>,
  typed: readonly string[],
  misspelt: boolean,
  { usage, limit = 8 }: SearchOptions,
): Match<F>[] {
  const expansions = typed.map((word, i) =>
    expandWord(index, word, { misspelt, last: i === typed.length - 1 }),
  );
  const hits = intersect(index, expansions);
  const masks = Object.values(qualities).map((quality) => wordsOfTerm(expansions, quality));
  const best: { match: Match<F>; length: number }[] = [];
  for (const { place, quality } of hits) {
    const food = index.foods[place];
    if (!food) continue;
    const cover = coverOf(index, place, masks[quality] ?? new Map(), 2 ** typed.length - 1);
    const match: Match<F> = {
      food,
      level: levelOf(quality, cover),
      quality,
      cover,
      usage: usage?.get(food.id) ?? 0,
    };
    insert(best, { match, length: food.name.length }, limit);
  }
  return best.map(({ match }) => match);
}

/** The foods in which every word is found, with the quality of the worst word in its best form. */
function intersect(
  index: FoodIndex<Findable>,
  expansions: readonly (readonly Expansion[])[],
): { place: number; quality: number }[] {
  const found = new Uint8Array(index.foods.length);
  const worst = new Uint8Array(index.foods.length);
  const hits: { place: number; quality: number }[] = [];
  expansions.forEach((expansion, word) => {
    // Whole words come first in an expansion, so the first visit of a food is the one that counts.
    for (const { term, quality } of expansion) {
      for (const place of index.postings[term] ?? []) {
        if (found[place] !== word) continue;
        found[place] = word + 1;
        if (quality > (worst[place] ?? 0)) worst[place] = quality;
        if (word === expansions.length - 1) hits.push({ place, quality: worst[place] ?? 0 });
      }
    }
  });
  return hits;
}

/** For each term the typed words that it stands for with this quality or better, as bits. */
function wordsOfTerm(
  expansions: readonly (readonly Expansion[])[],
  worst: number,
): ReadonlyMap<number, number> {
  const masks = new Map<number, number>();
  expansions.forEach((expansion, word) => {
    for (const { term, quality } of expansion) {
      if (quality <= worst) masks.set(term, (masks.get(term) ?? 0) | (1 << word));
    }
  });
  return masks;
}

function coverOf(
  index: FoodIndex<Findable>,
  place: number,
  masks: ReadonlyMap<number, number>,
  all: number,
): number {
  /** The typed words that a title holds, or 0 when the title has a word that was not typed. */
  const held = (title: readonly number[], length: number): number => {
    let mask = 0;
    for (let i = 0; i < length; i++) {
      const bits = masks.get(title[i] ?? -1);
      if (bits === undefined) return 0;
      mask |= bits;
    }
    return mask;
  };
  const name = index.names[place] ?? [];
  if (held(name, name.length) === all) return covers.name;
  let partly = false;
  for (const alias of index.aliases[place] ?? []) {
    const mask = held(alias, alias.length);
    if (mask === all) return covers.alias;
    if (mask > 0) partly = true;
  }
  const head = held(name, index.headLengths[place] ?? 0);
  if (head === all) return covers.head;
  return partly || head > 0 ? covers.more : covers.other;
}

function levelOf(quality: number, cover: number): number {
  if (quality >= qualities.misspelt) return 3;
  if (quality === qualities.begun || cover > covers.head) return 2;
  return cover === covers.name ? 0 : 1;
}

type Ranked<F> = { match: Match<F>; length: number };

function before<F>(a: Ranked<F>, b: Ranked<F>): number {
  return (
    a.match.level - b.match.level ||
    b.match.usage - a.match.usage ||
    a.match.quality - b.match.quality ||
    a.match.cover - b.match.cover ||
    a.length - b.length
  );
}

/** Keeps the best in order; equals stay in the order in which they came. */
function insert<F>(best: Ranked<F>[], ranked: Ranked<F>, limit: number): void {
  let at = best.length;
  while (at > 0 && before(ranked, best[at - 1] ?? ranked) < 0) at--;
  if (at >= limit) return;
  best.splice(at, 0, ranked);
  if (best.length > limit) best.pop();
}
