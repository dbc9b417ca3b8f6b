import { formatDecimal } from '../units/decimal.ts';
import { type BodyMassUnit, gramsPer } from '../units/mass.ts';

/** A rate of the body mass a day as the athlete reads it: `3.31 g/kg`, and `1.50 g/lb` with it for who reads pounds. */
export function sayRate(gPerKg: number, unit: BodyMassUnit): string {
  const perKg = `${formatDecimal(gPerKg, 2)} g/kg`;
  if (unit === 'kg') return perKg;
  return `${formatDecimal((gPerKg * gramsPer.lb) / gramsPer.kg, 2)} g/lb (${perKg})`;
}

/** Grams for reading: `300 g`. */
export function sayGrams(grams: number): string {
  return `${formatDecimal(grams)} g`;
}

/** A share for reading: `18 %`. */
export function sayPercent(share: number): string {
  return `${formatDecimal(100 * share)} %`;
}
