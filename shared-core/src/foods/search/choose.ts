import { qualities } from './expand-word.ts';
import type { Findable } from './food-index.ts';
import type { Match } from './search.ts';
import { headOf, stems } from './words.ts';

/** What a query means: one food, or several of which the athlete has to choose; none when nothing was found. */
export interface Choice<F> {
  food: F | undefined;
  /** All that were found, the meant or the likeliest one first. */
  foods: readonly F[];
  /** No food is called so: they are what another spelling of it may have meant. */
  doubtful: boolean;
}

/** Eaten at least so many times as often decides (common practice, no source). */
const clearlyMore = 2;

/**
 * Decides between the matches of a query, best first. What was called equally well is decided by habit, or else asked;
 * what is doubtful is always asked.
 * Habit also overrules the food that owns a word in favour of another state of it: who weighs rice dry means that by
 * `rice`. In favour of another kind, brown rice by `rice`, it does not, since butter is not peanut butter: then it is asked.
 */
export function chooseFood<F extends Findable>(query: string, matches: readonly Match<F>[]): Choice<F> {
  const [first, second] = matches;
  if (!first) return { food: undefined, foods: [], doubtful: false };
  const doubtful = first.quality === qualities.doubtful;
  const order = (top: Match<F>) => [top, ...matches.filter((match) => match !== top)].map(({ food }) => food);
  const decided = (meant: Match<F>) => ({ food: meant.food, foods: order(meant), doubtful });
  const asked = (likeliest: Match<F>) => ({ food: undefined, foods: order(likeliest), doubtful });
  if (doubtful) return asked(first);

  const eaten = matches.reduce((a, b) => (b.usage > a.usage ? b : a));
  if (first.level === 1 && eaten.level === 2 && eaten.quality === 0) {
    if (isSameFood(eaten.food, first.food)) {
      return eaten.usage >= clearlyMore * first.usage ? decided(eaten) : asked(eaten);
    }
    if (first.usage === 0 && isKindOf(eaten.food, query)) return asked(eaten);
  }
  if (!second || second.level > first.level) return decided(first);
  const habit = first.usage > 0 && first.usage >= clearlyMore * second.usage;
  const calledBetter =
    second.usage === 0 && (first.quality !== second.quality || first.cover !== second.cover);
  return habit || calledBetter ? decided(first) : asked(first);
}

/** Whether two foods differ in state or cut only: `White rice, dry` and `White rice, cooked`. */
function isSameFood(a: Findable, b: Findable): boolean {
  return stems(headOf(a.name)).join(' ') === stems(headOf(b.name)).join(' ');
}

/** Whether a food is named as a kind of what was typed: `Brown rice` of `rice`, `Ground beef 93/7` of `beef`. */
function isKindOf(food: Findable, query: string): boolean {
  const head = stems(headOf(food.name)).filter((word) => !/^\d/.test(word));
  const typed = stems(query);
  return typed.every((word, i) => head[head.length - typed.length + i] === word);
}
