import { words } from '../search/words.ts';
import { itemsIn, tokensIn } from './comma-names.ts';
import {
  type Edible,
  type Interpretation,
  interpret,
  type Larder,
  portionTyped,
  textOf,
} from './interpret.ts';
import type { Span } from './items.ts';
import { isAmountOnly, readingsOf } from './readings.ts';
import { askOfParted, severalAdvice } from './several-advice.ts';
import { type Measure, weighTyped } from './weigh.ts';

/** What an item of a typed line turned out to be. A `message` says what is wrong and what to do. */
export type Outcome<F> =
  | { status: 'ok'; food: F; grams: number; amount: string | null }
  /** How much is usual is for the caller to say. */
  | { status: 'needs-amount'; food: F; message: string }
  | { status: 'ambiguous'; choices: readonly F[]; message: string }
  | { status: 'bad-amount'; food: F; message: string }
  | { status: 'unknown-food'; message: string }
  /** An amount alone. */
  | { status: 'needs-food'; message: string };

/** An item with its place in the line, so that what cannot be read is marked where it stands and the rest is kept. */
export type TypedItem<F> = Span & Outcome<F>;

const mostChoices = 5;

/**
 * Reads a typed line: `200 chicken, 2 eggs + 6 whites, 80g oats`. Items stand between `,` `;` `+` or line ends. Grams to
 * the milligram; `amount` is null when it was typed in grams. Never throws.
 */
export function parseLine<F extends Edible>(line: string, larder: Larder<F>): TypedItem<F>[] {
  return itemsIn(line, larder).map((span) => ({ ...span, ...readItem(span.text, larder) }));
}

/** Reads one item of a typed line. */
export function readItem<F extends Edible>(text: string, larder: Larder<F>): Outcome<F> {
  const tokens = tokensIn(text);
  const readings = readingsOf(tokens);
  if (isAmountOnly(readings)) {
    return {
      status: 'needs-food',
      message: 'Which food? Type its name beside the amount, without a comma.',
    };
  }
  const interpretation = interpret(readings, larder);
  const parted = askOfParted(tokens);
  if (parted) {
    const food = interpretation?.choice.food;
    return food
      ? { status: 'bad-amount', food, message: parted }
      : { status: 'unknown-food', message: parted };
  }
  const advice = severalAdvice(tokens);
  if (interpretation) return outcomeOf(interpretation, advice);
  const first = advice && `${advice}, `;
  return {
    status: 'unknown-food',
    message: `No food matches ${text}: ${first}check the spelling, or add it to the larder.`,
  };
}

function outcomeOf<F extends Edible>(
  { reading, query, choice }: Interpretation<F>,
  advice: string,
): Outcome<F> {
  const { food } = choice;
  if (!food) {
    const choices = choice.foods.slice(0, mostChoices);
    const message = choice.doubtful
      ? `No food is called ${query}: choose what you meant, or check the spelling.`
      : `Several foods match ${query}: choose one.`;
    return { status: 'ambiguous', choices, message };
  }
  if (!reading.amount) {
    return { status: 'needs-amount', food, message: `How much ${food.name}? Type an amount beside it.` };
  }
  const measure = measureOf(food, reading.measure, query, advice);
  const weighed = typeof measure === 'string' ? measure : weighTyped(food, reading.amount, measure);
  return typeof weighed === 'string'
    ? { status: 'bad-amount', food, message: weighed }
    : { status: 'ok', food, ...weighed };
}

function measureOf(
  food: Edible,
  typed: Interpretation<Edible>['reading']['measure'],
  query: string,
  advice: string,
): Measure | string {
  if (typed.kind === 'unit') return typed;
  if (typed.kind === 'count') return { kind: 'count', plural: /[^s]s$/.test(words(query).at(-1) ?? '') };
  const portion = portionTyped(food.portions, typed.words);
  if (portion) return { kind: 'portion', portion };
  const noPortion = `${food.name} has no portion ${textOf(typed.words)}`;
  if (advice) return `${noPortion}: ${advice}.`;
  const known = food.portions.map(({ name }) => name);
  const instead = known.length === 0 ? 'type grams' : `type one of ${['grams', ...known].join(', ')}`;
  return `${noPortion}: ${instead}, or add the food you mean to the larder.`;
}
