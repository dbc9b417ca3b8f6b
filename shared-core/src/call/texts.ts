import { formatEstimatedEnergy } from '../units/energy.ts';
import { formatTapeChange, lengthUnit } from '../units/length.ts';
import { formatBodyMass, formatBodyMassChange, formatRate } from '../units/mass.ts';
import { formatEnergyPerMass, type Units } from '../units/reader.ts';

/** How the call's texts say what has a unit, in the units that the athlete reads. */
export interface Say {
  energy: (kcal: number) => string;
  mass: (kg: number) => string;
  massChange: (kg: number) => string;
  tapeChange: (cm: number) => string;
  rate: (gPerKg: number) => string;
  /** Energy for each unit of fat-free mass. */
  available: (kcalPerKg: number) => string;
}

/** The wordings in an athlete's own units. */
export function sayIn(units: Units): Say {
  return {
    energy: (kcal) => formatEstimatedEnergy(kcal, units.energy),
    mass: (kg) => formatBodyMass(kg, units.mass),
    massChange: (kg) => formatBodyMassChange(kg, units.mass),
    tapeChange: (cm) => formatTapeChange(cm, lengthUnit(units.mass)),
    rate: (gPerKg) => formatRate(gPerKg, units.mass),
    available: (kcalPerKg) => formatEnergyPerMass(kcalPerKg, units),
  };
}

/** A number with its noun: `1 day`, `3 days`. */
export const counted = (count: number, one: string) => `${count} ${count === 1 ? one : `${one}s`}`;

/** A number of days in words. */
export const days = (count: number) => counted(count, 'day');

/** Two ends with one unit: `+0.10 to +0.42 %`. */
export function range(low: number, high: number, print: (value: number) => string): string {
  const first = print(low);
  const last = print(high);
  const unit = first.slice(first.lastIndexOf(' '));
  return `${last.endsWith(unit) ? first.slice(0, first.length - unit.length) : first} to ${last}`;
}
