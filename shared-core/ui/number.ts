import { formatDecimal, formatSigned } from '../src/units/decimal.ts';
import { type EnergyUnit, energyIn } from '../src/units/energy.ts';
import { type BodyMassUnit, bodyMassIn } from '../src/units/mass.ts';
import { paceStep } from '../src/units/percent.ts';
import { roundTo } from '../src/units/round.ts';

/** Grams in a column of figures: whole, without the unit, because a food's label knows no more. */
export function gramsFigure(grams: number): string {
  return formatDecimal(grams);
}

/** Grams as they were weighed or typed, without the unit: to a tenth, below one gram to a hundredth, no zeros behind. */
export function weighedFigure(grams: number): string {
  return formatDecimal(grams, grams < 1 ? 2 : 1).replace(/\.?0+$/, '');
}

/** Energy in a column of figures: whole kcal or kJ without the unit. */
export function energyFigure(kcal: number, unit: EnergyUnit): string {
  return formatDecimal(energyIn(kcal, unit));
}

/** Body mass without its unit, one decimal: for columns and for the ends of an interval. */
export function massFigure(kg: number, unit: BodyMassUnit): string {
  return formatDecimal(bodyMassIn(kg, unit), 1);
}

/** Pace in % of body mass a week without the unit, to the last digit that is known. */
export function paceFigure(percentPerWeek: number): string {
  return formatSigned(roundTo(percentPerWeek, paceStep), 2);
}
