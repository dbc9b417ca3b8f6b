import uFuzzy from '@leeoniya/ufuzzy';
import { indexFoods } from '@platewright/core/foods/search/food-index.ts';
import { searchFoods } from '@platewright/core/foods/search/search.ts';
import { words } from '@platewright/core/foods/search/words.ts';
import MiniSearch from 'minisearch';
import { type Compared, printTable } from './table.ts';
import { type Random, seededRandom } from './virtual-athletes/random.ts';

const foodCount = 10_000;
const vocabularySize = 1_900;
const queriesOfAKind = 200;
const rounds = 15;
const kinds = ['half typed', 'reordered', 'misspelt'] as const;
type Kind = (typeof kinds)[number];

interface Query {
  kind: Kind;
  text: string;
  /** What the athlete had in mind: a food with all of these is a hit. */
  meant: readonly string[];
}

/** Best ten places for a query. */
type Engine = (query: string) => number[];

const builders: Record<string, (names: readonly string[]) => Engine> = {
  ours(names) {
    const foods = names.map((name, place) => ({ id: String(place), name, aliases: [] }));
    const index = indexFoods(foods);
    return (query) => searchFoods(index, query, { limit: 10 }).map(({ food }) => Number(food.id));
  },
  minisearch(names) {
    const index = new MiniSearch<{ id: number; name: string }>({
      fields: ['name'],
      searchOptions: { prefix: true, fuzzy: 0.25, combineWith: 'AND' },
    });
    index.addAll(names.map((name, id) => ({ id, name })));
    return (query) =>
      index
        .search(query)
        .slice(0, 10)
        .map(({ id }) => Number(id));
  },
  ufuzzy(names) {
    const haystack = [...names];
    const engine = new uFuzzy({ intraMode: 1 });
    return (query) => {
      const [places, info, order] = engine.search(haystack, query, 1);
      const best = info && order ? order.map((i) => info.idx[i] ?? 0) : (places ?? []);
      return best.slice(0, 10);
    };
  },
};

/**
 * Search over 10,000 invented food names against two libraries, in one run and interleaved: time to build, time of a query
 * (median and 99th percentile over queries), and how often a meant food is in the best ten. A time is the median of its
 * rounds.
 */
export function benchSearch(): Compared[] {
  const random = seededRandom(20_260_101);
  const names = inventNames(random);
  const wordsOf = names.map((name) => new Set(words(name)));
  const queries = kinds.flatMap((kind) => inventQueries(random, names, kind));
  const runs = Object.entries(builders).map(([name, build]) => ({
    name,
    build,
    buildTimes: [] as number[],
    queryTimes: queries.map((): number[] => []),
    hits: queries.map(() => false),
  }));

  for (let round = 0; round < rounds; round++) {
    for (const run of [...runs.slice(round % runs.length), ...runs.slice(0, round % runs.length)]) {
      const start = performance.now();
      const engine = run.build(names);
      run.buildTimes.push(performance.now() - start);
      queries.forEach(({ text, meant }, i) => {
        const before = performance.now();
        const places = engine(text);
        run.queryTimes[i]?.push(performance.now() - before);
        run.hits[i] = places.some((place) => meant.every((word) => wordsOf[place]?.has(word)));
      });
    }
  }

  const [ours, ...others] = runs.map(({ name, buildTimes, queryTimes, hits }) => {
    const times = queryTimes.map((rounds) => quantile(rounds, 0.5));
    const found = (kind: Kind) => hits.filter((hit, i) => hit && queries[i]?.kind === kind).length;
    return {
      name,
      build: quantile(buildTimes, 0.5),
      ...{ p50: quantile(times, 0.5), p99: quantile(times, 0.99) },
      found: kinds.map((kind) => ({ kind, share: (100 * found(kind)) / queriesOfAKind })),
    };
  });
  if (ours === undefined) return [];
  return others.flatMap((theirs): Compared[] => {
    const row = (what: string, unit: string, own: number, other: number) => ({
      ...{
        what: `search of ${foodCount} foods: ${what}`,
        unit,
        ours: own,
        reference: theirs.name,
        theirs: other,
      },
    });
    return [
      row('index', 'ms', ours.build, theirs.build),
      row('a query, median', 'ms', ours.p50, theirs.p50),
      row('a query, 99th percentile', 'ms', ours.p99, theirs.p99),
      ...ours.found.map(({ kind, share }, i) =>
        row(`${kind}, in the best ten`, '%', share, theirs.found[i]?.share ?? Number.NaN),
      ),
    ];
  });
}

function inventNames(random: Random): string[] {
  const vocabulary = new Set<string>();
  while (vocabulary.size < vocabularySize) vocabulary.add(inventWord(random));
  const list = [...vocabulary];
  // Squared, so that a few words are in many names, as `raw` and `cooked` are.
  const pick = () => list[Math.floor(random.even() ** 2 * list.length)] ?? '';
  return Array.from({ length: foodCount }, () => {
    const head = [pick(), pick()];
    const rest = Array.from({ length: 1 + Math.floor(random.even() * 3) }, pick);
    return `${head.join(' ')}, ${rest.join(', ')}`;
  });
}

function inventWord(random: Random): string {
  const letter = (of: string) => of[Math.floor(random.even() * of.length)] ?? '';
  const syllables = 2 + Math.floor(random.even() * 2);
  const parts = Array.from({ length: syllables }, () => letter('bcdfghklmnprst') + letter('aeiou'));
  return parts.join('') + letter('bcdfghklmnprt');
}

function inventQueries(random: Random, names: readonly string[], kind: Kind): Query[] {
  return Array.from({ length: queriesOfAKind }, () => {
    const name = names[Math.floor(random.even() * names.length)] ?? '';
    const [first = '', second = '', third = ''] = words(name);
    const texts: Record<Kind, string> = {
      'half typed': `${first.slice(0, 4)} ${second.slice(0, 3)}`,
      reordered: `${third} ${second} ${first}`,
      misspelt: `${misspell(random, first)} ${second}`,
    };
    return {
      kind,
      meant: kind === 'reordered' ? [first, second, third] : [first, second],
      text: texts[kind],
    };
  });
}

/** One edit at any letter, the first one too. */
function misspell(random: Random, word: string): string {
  const at = Math.floor(random.even() * (word.length - 1));
  const other = 'aeioubcdfghklmnprst'[Math.floor(random.even() * 19)] ?? '';
  const edits = [
    word.slice(0, at) + word.slice(at + 1),
    word.slice(0, at) + other + word.slice(at),
    word.slice(0, at) + other + word.slice(at + 1),
    word.slice(0, at) + word.charAt(at + 1) + word.charAt(at) + word.slice(at + 2),
  ];
  return edits[Math.floor(random.even() * edits.length)] ?? word;
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

if (import.meta.main) printTable(benchSearch());
