import type { NutrientSum } from '../foods/nutrients.ts';
import type { DayLog, Entry } from '../records/kinds.ts';

/** Share of the energy asked for that a log must have to be taken as whole (common practice, no source). */
const ENOUGH_ENERGY = 0.7;

/**
 * Whether everything eaten on a date is in the log. What the athlete says counts; otherwise a log counts as whole when
 * all meals but one have entries and the energy is at least seven tenths of what was asked for.
 */
export function completeness(
  log: DayLog | undefined,
  entries: readonly Entry[],
  eaten: NutrientSum | null,
  meals: number,
  askedKcal: number,
): { complete: boolean; completeStated: boolean } {
  if (log?.complete !== undefined) return { complete: log.complete, completeStated: true };
  const logged = new Set(entries.map((entry) => entry.meal)).size;
  const energy = eaten?.known.energyKcal ?? 0;
  return {
    complete: logged >= meals - 1 && energy >= ENOUGH_ENERGY * askedKcal,
    completeStated: false,
  };
}
