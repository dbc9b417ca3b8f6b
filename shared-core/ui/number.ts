import { formatDecimal } from '../src/units/decimal.ts';
import { type EnergyUnit, kJFromKcal } from '../src/units/energy.ts';
import { type BodyMassUnit, poundsFromKg } from '../src/units/mass.ts';
import { roundTo } from '../src/units/round.ts';

/** Grams in a column of figures: whole, without the unit, because a food's label knows no more. */
export function gramsFigure(grams: number): string {
  return formatDecimal(grams);
}

/** Energy in a column of figures: whole kcal or kJ without the unit. */
export function energyFigure(kcal: number, unit: EnergyUnit): string {
  return formatDecimal(unit === 'kcal' ? kcal : kJFromKcal(kcal));
}

/** Body mass in the athlete's unit as a number, for scales and axes. */
export function massIn(kg: number, unit: BodyMassUnit): number {
  return unit === 'kg' ? kg : poundsFromKg(kg);
}

/** Body mass without its unit, one decimal: for columns and for the ends of an interval. */
export function massFigure(kg: number, unit: BodyMassUnit): string {
  return formatDecimal(massIn(kg, unit), 1);
}

/** A difference of body mass with its sign, `+0.3 kg`. */
export function formatMassChange(kg: number, unit: BodyMassUnit): string {
  return `${signed(massIn(kg, unit), 1)} ${unit}`;
}

/** Pace in % of body mass a week without the unit, to 0.05 %: the next digit is not known. */
export function paceFigure(percentPerWeek: number): string {
  return signed(roundTo(percentPerWeek, 0.05), 2);
}

/** A number with its sign always shown, except for zero. */
export function signed(value: number, decimals: number): string {
  const text = formatDecimal(value, decimals);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}
