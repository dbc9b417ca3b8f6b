import { roundTo } from '../../units/round.ts';
import { foodNamed } from '../search/food-index.ts';
import type { Edible, Larder } from './interpret.ts';
import { formatNumber } from './number.ts';
import { readItem } from './parse.ts';

/** An item as it is logged: grams, and the amount as typed when that was not in grams. */
export interface LoggedItem<F> {
  food: F;
  grams: number;
  amount: string | null;
}

/** A name that no separator, quote or second meaning can hurt. */
function quote(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

/** A food so that nothing else can be read: its name in quotes, or its id where another food has the same name. */
export function quoteFood<F extends Edible>(food: F, { index }: Larder<F>): string {
  const named = foodNamed(index, food.name);
  return quote(named !== undefined && named.id !== food.id ? food.id : food.name);
}

/** An amount whose three decimals can't be thousands: `1.1250 g`. */
function clearly(amount: string): string {
  return amount.replace(/^\d+\.\d{3}(?!\d)/, '$&0');
}

/** A name without what separates items: `Chicken breast roasted`. */
export function plainly(name: string): string {
  return name.replace(/[\s,;+"]+/g, ' ').trim();
}

/**
 * An item as text that reads back as the same item. Plain words where they are enough, `200 g Chicken breast roasted`;
 * quotes where the name would read as something else, and grams where the larder no longer has the portion.
 */
export function formatItem<F extends Edible>(item: LoggedItem<F>, larder: Larder<F>): string {
  const { food, amount } = item;
  const grams = roundTo(item.grams, 0.001);
  const inGrams = clearly(`${formatNumber(grams)} g`);
  const typed = amount ?? inGrams;
  const inPortions = food.portions
    .filter(({ name }) => amount?.endsWith(` ${name}`))
    .map(({ name }) => `${amount?.slice(0, -name.length)}${quote(name)}`);
  const candidates = [
    `${plainly(typed)} ${plainly(food.name)}`,
    `${clearly(plainly(typed))} ${plainly(food.name)}`,
    ...[plainly(typed), ...inPortions].map((text) => `${clearly(text)} ${quoteFood(food, larder)}`),
  ];
  const faithful = candidates.find((text) => {
    const read = readItem(text, larder);
    return read.status === 'ok' && read.food.id === food.id && read.grams === grams && read.amount === amount;
  });
  return faithful ?? `${inGrams} ${quoteFood(food, larder)}`;
}

/** A typed line that reads back as the same items. */
export function formatLine<F extends Edible>(items: readonly LoggedItem<F>[], larder: Larder<F>): string {
  return items.map((item) => formatItem(item, larder)).join(', ');
}
