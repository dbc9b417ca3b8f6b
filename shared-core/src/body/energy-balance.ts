/** Error of a log in one direction that weeks do not average out, share of the intake (common practice, no source). */
const LOG_LEAN = 0.03;
/** How far maintenance wanders in a week, kcal/d (common practice, no source). */
const DRIFT_PER_WEEK = 20;

/**
 * Energy eaten less energy used over a window, kcal, with its standard deviation. `intakesKcal` holds one value for each
 * day, null where the log is missing or not complete; the missing days are taken as the mean of the others. `maintenance`
 * must be known from before the window, or it would be the weighing counted twice. Null with fewer than half of the days.
 */
export function energyBalance(
  intakesKcal: readonly (number | null)[],
  maintenance: { mean: number; sd: number },
): { mean: number; sd: number } | null {
  const logged = intakesKcal.filter((kcal) => kcal !== null);
  const days = intakesKcal.length;
  if (logged.length === 0 || logged.length < days / 2) return null;
  const intake = logged.reduce((sum, kcal) => sum + kcal, 0) / logged.length;
  const spread = logged.reduce((sum, kcal) => sum + (kcal - intake) ** 2, 0) / logged.length;
  const unlogged = (spread * (days - logged.length)) / days / logged.length;
  const drift = (DRIFT_PER_WEEK ** 2 * days) / 7 / 3;
  const daily = maintenance.sd ** 2 + (LOG_LEAN * intake) ** 2 + unlogged + drift;
  return { mean: days * (intake - maintenance.mean), sd: days * Math.sqrt(daily) };
}
