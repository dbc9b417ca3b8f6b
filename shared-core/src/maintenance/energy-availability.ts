/**
 * Energy availability in kcal per kg of fat-free mass a day: what is eaten less what a session costs. IOC consensus,
 * Mountjoy et al. 2014, 2018, 2023. The levels come from laboratory studies of women and are unknown in men.
 */
export function energyAvailability(energyKcal: number, exerciseKcal: number, fatFreeKg: number): number {
  return (energyKcal - exerciseKcal) / fatFreeKg;
}

/** kcal per kg of fat-free mass a day: about 45 is held to be healthy, 30 and less to be low. */
export const availabilityLevels = { healthy: 45, low: 30 } as const;

/** Resistance training with 8 to 15 repetitions, in multiples of rest: Compendium of Physical Activities 02054, from memory. */
const sessionMet = 3.5;
/** Length of a session (common practice, no source). */
export const sessionMinutes = 60;

/** What a session costs above rest, kcal: (MET − 1) × 3.5 × kg / 200 for each minute (Ainsworth et al. 2011). */
export function sessionKcal(bodyMassKg: number): number {
  return (((sessionMet - 1) * 3.5 * bodyMassKg) / 200) * sessionMinutes;
}
