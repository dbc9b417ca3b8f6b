import { z90 } from '../trend/normal.ts';
import { kgPerSurplusKcal } from './energy-density.ts';
import { type Person, startFatKg, startMaintenance } from './start-estimate.ts';

/** Energy a day, kcal, that should bring the aim's pace, before any weigh-in is known. */
export interface ExpectedEnergy {
  kcal: number;
  /** 90 % interval. */
  lowKcal: number;
  highKcal: number;
}

/** Maintenance by equation plus what must be eaten for the tissue that the pace asks for; pace in % of body mass a week. */
export function expectedEnergy(
  person: Person,
  bodyMassKg: number,
  pacePercentPerWeek: number,
): ExpectedEnergy {
  const maintenance = startMaintenance(person, bodyMassKg);
  const kgPerDay = ((pacePercentPerWeek / 100) * bodyMassKg) / 7;
  const kcal = maintenance.kcal + kgPerDay / kgPerSurplusKcal(startFatKg(person, bodyMassKg));
  return {
    kcal,
    lowKcal: kcal - z90 * maintenance.sd,
    highKcal: kcal + z90 * maintenance.sd,
  };
}
