import type { Athlete } from '../records/kinds.ts';
import type { Units } from './types.ts';

/** In which units the athlete reads. */
export function unitsOf(athlete: Athlete): Units {
  return { mass: athlete.massUnit, energy: athlete.energyUnit };
}
