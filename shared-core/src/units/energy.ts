import { formatDecimal, parseQuantity } from './decimal.ts';
import { roundTo } from './round.ts';

/** Kilojoules in one thermochemical kilocalorie, exact (UCUM cal_th; USDA SR28 documentation). */
export const kJPerKcal = 4.184;

/** The unit in which an athlete reads and types energy. */
export type EnergyUnit = 'kcal' | 'kJ';

/** Kilocalories as kilojoules. */
export function kJFromKcal(kcal: number): number {
  return kcal * kJPerKcal;
}

/** Kilojoules as kilocalories. */
export function kcalFromKJ(kJ: number): number {
  return kJ / kJPerKcal;
}

/** Energy in the athlete's unit as a number. */
export function energyIn(kcal: number, unit: EnergyUnit): number {
  return unit === 'kcal' ? kcal : kJFromKcal(kcal);
}

/** Energy that was added up from foods, for reading: to 1 kcal or 1 kJ, as labels print it. */
export function formatEnergy(kcal: number, unit: EnergyUnit): string {
  return `${formatDecimal(energyIn(kcal, unit))} ${unit}`;
}

/** Energy that was estimated, in the athlete's unit to 10 kcal or 50 kJ: the last digit of an estimate is not known. */
export function estimatedEnergyIn(kcal: number, unit: EnergyUnit): number {
  return roundTo(energyIn(kcal, unit), unit === 'kcal' ? 10 : 50);
}

/** The same for reading: `2850 kcal`. */
export function formatEstimatedEnergy(kcal: number, unit: EnergyUnit): string {
  return `${formatDecimal(estimatedEnergyIn(kcal, unit))} ${unit}`;
}

/** Typed energy in kcal: `380`, `380 kcal`, `1590 kJ`. A bare number is in `unit`; undefined when unreadable or negative. */
export function parseEnergy(text: string, unit: EnergyUnit): number | undefined {
  const typed = parseQuantity(text);
  if (!typed || typed.value < 0) return undefined;
  switch (typed.unit === '' ? unit.toLowerCase() : typed.unit) {
    case 'kcal':
    case 'cal':
      return typed.value;
    case 'kj':
      return kcalFromKJ(typed.value);
    default:
      return undefined;
  }
}
