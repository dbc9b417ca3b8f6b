import { formatDecimal } from '../units/decimal.ts';
import { roundTo } from '../units/round.ts';

/** Numbers as the call's texts print them. */
export const kg = (value: number) => `${value.toFixed(1)} kg`;
export const signedKg = (value: number) => `${signed(value, 1)} kg`;
export const percent = (value: number) => `${signed(value, 2)} %`;
/** A pace that was measured: the digit after 0.05 % is not known. */
export const pace = (value: number) => percent(roundTo(value, 0.05));
export const kcal = (value: number) => `${formatDecimal(roundTo(value, 10))} kcal`;
export const grams = (value: number) => `${Math.round(value)} g`;
export const chance = (value: number) => `${Math.round(100 * value)} %`;
export const days = (count: number) => (count === 1 ? '1 day' : `${count} days`);

/** A number with its sign, a true minus in front of negative ones. */
export function signed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  if (Number(text) === 0) return text;
  return value < 0 ? `−${text}` : `+${text}`;
}

/** Two ends with one unit: `+0.10 to +0.42 %`. */
export function range(low: number, high: number, print: (value: number) => string): string {
  const first = print(low);
  const last = print(high);
  const unit = first.slice(first.lastIndexOf(' '));
  return `${last.endsWith(unit) ? first.slice(0, first.length - unit.length) : first} to ${last}`;
}
