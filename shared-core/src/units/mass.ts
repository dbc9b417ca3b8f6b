import { formatDecimal, parseQuantity } from './decimal.ts';

/**
 * Grams in one unit of mass, exact. Pound = 7000 grains of 64.79891 mg, ounce = pound / 16
 * (UCUM [lb_av], [oz_av]; international yard and pound of 1959).
 */
export const gramsPer = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 } as const;

/** Grams in the ounce of US nutrition labels, 21 CFR 101.9(b)(5)(viii); UCUM [oz_m]. */
export const gramsPerLabelOunce = 28;

/** The unit in which an athlete reads and types body mass. */
export type BodyMassUnit = 'kg' | 'lb';

/** Kilograms as pounds. */
export function poundsFromKg(kg: number): number {
  return (kg * gramsPer.kg) / gramsPer.lb;
}

/** Pounds as kilograms. */
export function kgFromPounds(pounds: number): number {
  return (pounds * gramsPer.lb) / gramsPer.kg;
}

/**
 * Body mass for reading, `81.6 kg` or `180.0 lb`. One decimal in both units: household scales show no more, and a
 * second one would be a false digit.
 */
export function formatBodyMass(kg: number, unit: BodyMassUnit): string {
  return `${formatDecimal(unit === 'kg' ? kg : poundsFromKg(kg), 1)} ${unit}`;
}

/** Typed body mass in kg: `82,4`, `180 lb`, `82.4kg`. A bare number is in `unit`; undefined when unreadable or not positive. */
export function parseBodyMass(text: string, unit: BodyMassUnit): number | undefined {
  const typed = parseQuantity(text);
  if (!typed || typed.value <= 0) return undefined;
  switch (typed.unit === '' ? unit : typed.unit) {
    case 'kg':
    case 'kgs':
      return typed.value;
    case 'lb':
    case 'lbs':
      return kgFromPounds(typed.value);
    default:
      return undefined;
  }
}
