const DAY_MS = 86_400_000;

/** How many days, weeks and months with a backup keep their newest one (common practice, no source). */
const KEPT = [
  { count: 7, period: (at: number) => Math.floor(at / DAY_MS) },
  // Day 0 was a Thursday; weeks begin on Monday (ISO 8601).
  { count: 4, period: (at: number) => Math.floor((Math.floor(at / DAY_MS) + 3) / 7) },
  { count: 12, period: (at: number) => new Date(at).getUTCFullYear() * 12 + new Date(at).getUTCMonth() },
] as const;

/**
 * Which of these backups to keep, by when they were made, ms since 1970: the newest of each of the last days, weeks and
 * months that have one, counted by those that have one, so that a machine that was off for a year loses none.
 */
export function rotate(times: readonly number[]): Set<number> {
  const newestFirst = [...times].sort((a, b) => b - a);
  const kept = new Set<number>();
  for (const { count, period } of KEPT) {
    const seen = new Set<number>();
    for (const at of newestFirst) {
      if (seen.has(period(at))) continue;
      if (seen.size === count) break;
      seen.add(period(at));
      kept.add(at);
    }
  }
  return kept;
}
