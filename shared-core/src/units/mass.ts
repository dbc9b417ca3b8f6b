import { formatDecimal, formatSigned, parseQuantity } from './decimal.ts';

/**
 * Grams in one unit of mass, exact. Pound = 7000 grains of 64.79891 mg, ounce = pound / 16
 * (UCUM [lb_av], [oz_av]; international yard and pound of 1959).
 */
export const gramsPer = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 } as const;

/** The unit in which an athlete reads and types body mass. */
export type BodyMassUnit = 'kg' | 'lb';

/** Kilograms as pounds. */
export function poundsFromKg(kg: number): number {
  return (kg * gramsPer.kg) / gramsPer.lb;
}

/** Body mass in the athlete's unit as a number, for scales and axes. */
export function bodyMassIn(kg: number, unit: BodyMassUnit): number {
  return unit === 'kg' ? kg : poundsFromKg(kg);
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
  return `${formatDecimal(bodyMassIn(kg, unit), 1)} ${unit}`;
}

/** A difference of body mass with its sign, `+0.3 kg`. */
export function formatBodyMassChange(kg: number, unit: BodyMassUnit): string {
  return `${formatSigned(bodyMassIn(kg, unit), 1)} ${unit}`;
}

/** Grams of food for reading, whole: `300 g`. */
export function formatGrams(grams: number): string {
  return `${formatDecimal(grams)} g`;
}

/**
 * A rate of the body mass, or a range of rates, as the athlete reads it: `3.31 g/kg`, and for who reads pounds
 * `1.50 g/lb (3.31 g/kg)`, because papers print it by the kilogram.
 */
export function formatRate(
  gPerKg: number | readonly [low: number, high: number],
  unit: BodyMassUnit,
): string {
  const rates = typeof gPerKg === 'number' ? [gPerKg] : gPerKg;
  const per = (kilograms: number) => rates.map((rate) => formatDecimal(rate * kilograms, 2)).join(' to ');
  const perKg = `${per(1)} g/kg`;
  return unit === 'kg' ? perKg : `${per(kgFromPounds(1))} g/lb (${perKg})`;
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
