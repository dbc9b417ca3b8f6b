import { formatDecimal } from './decimal.ts';
import { type EnergyUnit, energyIn } from './energy.ts';
import { type BodyMassUnit, bodyMassIn } from './mass.ts';

/** In which units an athlete reads. Lengths follow body mass: `lengthUnit`. */
export interface Units {
  mass: BodyMassUnit;
  energy: EnergyUnit;
}

/** The units that an athlete chose at set-up. */
export function unitsOf({ massUnit, energyUnit }: { massUnit: BodyMassUnit; energyUnit: EnergyUnit }): Units {
  return { mass: massUnit, energy: energyUnit };
}

/** The units in which everything is kept and reckoned. */
export const keptUnits: Units = { mass: 'kg', energy: 'kcal' };

/**
 * Energy for each kilogram or pound: `38 kcal per kg`, and `72 kJ per lb (38 kcal per kg)` for other readers, because
 * the published levels are in kcal and kg. Rounded down, so that what is under a level is never shown as at it.
 */
export function formatEnergyPerMass(kcalPerKg: number, units: Units): string {
  const say = ({ mass, energy }: Units) =>
    `${formatDecimal(Math.floor(energyIn(kcalPerKg, energy) / bodyMassIn(1, mass)))} ${energy} per ${mass}`;
  const kept = say(keptUnits);
  const own = say(units);
  return own === kept ? kept : `${own} (${kept})`;
}
