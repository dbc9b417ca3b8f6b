/** The set to beat next time. */
export interface NextMark {
  loadKg: number;
  repetitions: number;
  by: 'repetition' | 'plate';
  /** How much more than the last set it asks, % of the rep max by Epley; null for the first plate on an empty bar. */
  risePercent: number | null;
}

/** From here on more repetitions train endurance and tell little of strength (common practice, no source). */
const MOST_REPETITIONS = 12;

/**
 * One more repetition or the smallest plate, whichever asks less; the plate at twelve repetitions. Common practice, no
 * source; the rise lies within the 2–10 % of the American College of Sports Medicine (Med Sci Sports Exerc
 * 2009;41:687–708, from memory) for most bars. `stepKg` is the smallest step of the bar, both sides together.
 */
export function nextMark(loadKg: number, repetitions: number, stepKg: number): NextMark {
  const repetitionRise = 100 / (30 + repetitions);
  const plateRise = loadKg > 0 ? (100 * stepKg) / loadKg : Number.POSITIVE_INFINITY;
  if (repetitions < MOST_REPETITIONS && repetitionRise < plateRise)
    return { loadKg, repetitions: repetitions + 1, by: 'repetition', risePercent: repetitionRise };
  return { loadKg: loadKg + stepKg, repetitions, by: 'plate', risePercent: loadKg > 0 ? plateRise : null };
}
