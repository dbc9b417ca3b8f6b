import type { Portion } from '../../records/food.ts';
import type { Food } from '../../records/kinds.ts';
import { type Choice, chooseFood } from '../search/choose.ts';
import { type Findable, type FoodIndex, foodNamed } from '../search/food-index.ts';
import { type Match, searchFoods, type Usage } from '../search/search.ts';
import { portionNamed } from './portions.ts';
import type { Reading } from './readings.ts';
import type { Token } from './tokens.ts';
import { isMass, leadingUnit } from './units.ts';

/** What the typed line has to know of a food. */
export type Edible = Findable & Pick<Food, 'portions'>;

/** The foods to read a line against, and how often each has been eaten of late. */
export interface Larder<F extends Edible> {
  index: FoodIndex<F>;
  usage?: Usage | undefined;
}

/** A reading and the foods it names. */
export interface Interpretation<F> {
  reading: Reading;
  query: string;
  choice: Choice<F>;
}

/** So many are searched for a portion that only some of them may have. */
const manyFoods = 40;
const noLevel = 4;

/**
 * The reading of an item that names a food best: as typed, or else misspelt, or else with a portion that the food has not;
 * undefined when none names a food.
 */
export function interpret<F extends Edible>(
  readings: readonly Reading[],
  larder: Larder<F>,
): Interpretation<F> | undefined {
  return (
    best(readings, (reading) => matchesOf(reading, larder, false)) ??
    best(readings, (reading) => matchesOf(reading, larder, true)) ??
    best(readings, ({ food, measure }) =>
      measure.kind === 'portion' && !isMassNamed(measure.words)
        ? find(food, larder, { forgiving: false }).filter(({ level }) => level < 2)
        : [],
    )
  );
}

function best<F extends Edible>(
  readings: readonly Reading[],
  matchesOf: (reading: Reading) => Match<F>[],
): Interpretation<F> | undefined {
  let found: { reading: Reading; matches: Match<F>[] } | undefined;
  let level = noLevel;
  for (const reading of readings) {
    if (level === 0) break;
    const matches = matchesOf(reading);
    if ((matches[0]?.level ?? noLevel) >= level) continue;
    found = { reading, matches };
    level = matches[0]?.level ?? noLevel;
  }
  if (!found) return undefined;
  const query = textOf(found.reading.food);
  return { reading: found.reading, query, choice: chooseFood(query, found.matches) };
}

function matchesOf<F extends Edible>(
  { measure, food }: Reading,
  larder: Larder<F>,
  forgiving: boolean,
): Match<F>[] {
  if (measure.kind !== 'portion') {
    const found = find(food, larder, { forgiving });
    return food.length > 1 && isVessel(food[0]) ? found.filter(({ quality }) => quality === 0) : found;
  }
  const matches = find(food, larder, { forgiving, limit: manyFoods });
  return matches.filter((match) => portionTyped(match.food.portions, measure.words));
}

function find<F extends Edible>(
  food: readonly Token[],
  { index, usage }: Larder<F>,
  options: { forgiving?: boolean; limit?: number },
): Match<F>[] {
  const quote = food.find(({ kind }) => kind === 'quoted');
  if (quote && food.length > 1) return [];
  const named = quote && foodNamed(index, quote.text);
  return named
    ? [{ food: named, level: 0, quality: 0, cover: 0, usage: 0 }]
    : searchFoods(index, textOf(food), { usage, ...options });
}

/** The portion that was typed: of just this name when it was quoted. */
export function portionTyped(portions: readonly Portion[], typed: readonly Token[]): Portion | undefined {
  const quote = typed.find(({ kind }) => kind === 'quoted');
  if (!quote) return portionNamed(portions, textOf(typed));
  return typed.length === 1 ? portions.find(({ name }) => name === quote.text) : undefined;
}

/** Typed out, it begins no other word: `200 can beans` is no candy. */
function isVessel(token: Token | undefined): boolean {
  return /^(?:can|tin|bar|bag|pack|slice)$/i.test(token?.text ?? '');
}

/** Grams and pounds are no portions that a food could lack. */
function isMassNamed([first]: readonly Token[]): boolean {
  const leading = first && leadingUnit([first.text]);
  return leading !== undefined && isMass(leading.unit);
}

/** Tokens as text again. */
export function textOf(tokens: readonly Token[]): string {
  return tokens.map(({ text }) => text).join(' ');
}
