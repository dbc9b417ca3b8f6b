import { tissueKcalPerKg } from '../maintenance/energy-density.ts';
import { type Person, startFatKg, startMaintenance } from '../maintenance/start-estimate.ts';

/** Energy a day, kcal, that should bring the aim's pace, before any weigh-in is known. */
export interface ExpectedEnergy {
  kcal: number;
  /** 90 % interval. */
  lowKcal: number;
  highKcal: number;
}

/** Half width of a 90 % interval in standard deviations. */
const halfWidth = 1.645;

/** Maintenance by equation plus the energy of the tissue that the pace asks for; pace in % of body mass a week. */
export function expectedEnergy(
  person: Person,
  bodyMassKg: number,
  pacePercentPerWeek: number,
): ExpectedEnergy {
  const maintenance = startMaintenance(person, bodyMassKg);
  const kgPerDay = ((pacePercentPerWeek / 100) * bodyMassKg) / 7;
  const kcal = maintenance.kcal + kgPerDay * tissueKcalPerKg(startFatKg(person, bodyMassKg));
  return {
    kcal,
    lowKcal: kcal - halfWidth * maintenance.sd,
    highKcal: kcal + halfWidth * maintenance.sd,
  };
}
