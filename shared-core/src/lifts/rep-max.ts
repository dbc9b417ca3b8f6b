/** Most weight for one repetition as a set lets one guess it, kg, with a standard deviation. */
export interface RepMax {
  kg: number;
  sdKg: number;
}

/** Formulas are checked up to about ten repetitions. LeSuer DA et al. J Strength Cond Res 1997;11:211–213. */
const MOST_REPETITIONS = 10;

/** Epley B 1985: load·(1 + r/30). */
export function epleyKg(loadKg: number, repetitions: number): number {
  return loadKg * (1 + repetitions / 30);
}

/** Brzycki M. J Phys Educ Recreat Dance 1993;64(1):88–90: load·36/(37 − r). */
export function brzyckiKg(loadKg: number, repetitions: number): number {
  return (loadKg * 36) / (37 - repetitions);
}

/**
 * Rep max for one repetition: the load itself at one, else the mean of Epley and Brzycki (they cross at ten). People
 * differ: repetitions at a given share of the rep max spread by about a third of their number (Nuzzo JL et al. Sports Med
 * 2024;54:303–321, size from memory). Null above ten repetitions and for sets that are none.
 */
export function repMax(loadKg: number, repetitions: number): RepMax | null {
  if (!(loadKg > 0 && repetitions >= 1 && repetitions <= MOST_REPETITIONS)) return null;
  if (repetitions === 1) return { kg: loadKg, sdKg: 0 };
  const kg = (epleyKg(loadKg, repetitions) + brzyckiKg(loadKg, repetitions)) / 2;
  return { kg, sdKg: kg * (repetitions / 3 / (30 + repetitions)) };
}

/** Of each day the set with the largest rep max, and that in kg, in the order of the sets; a set that tells none is left out. */
export function bestOfDays<Set extends { loadKg: number; repetitions: number }, Day>(
  sets: readonly Set[],
  dayOf: (set: Set) => Day,
): Map<Day, { set: Set; kg: number }> {
  const best = new Map<Day, { set: Set; kg: number }>();
  for (const set of sets) {
    const kg = repMax(set.loadKg, set.repetitions)?.kg ?? 0;
    if (kg > (best.get(dayOf(set))?.kg ?? 0)) best.set(dayOf(set), { set, kg });
  }
  return best;
}
