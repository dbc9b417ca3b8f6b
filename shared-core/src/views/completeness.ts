import type { DayLog } from '../records/kinds.ts';
import type { EatenDay } from './eaten-day.ts';

/** Share of the energy asked for that a log must have to be taken as whole (common practice, no source). */
const ENOUGH_ENERGY = 0.7;

export interface Completeness {
  complete: boolean;
  /** True when the athlete said so, false when it was judged from the entries. */
  completeStated: boolean;
  /** Whether all meals but one have entries: a log that is small all the same may be all that was eaten. */
  everyMeal: boolean;
}

/**
 * Whether everything eaten on a date is in the log. What the athlete says counts; otherwise a log counts as whole when
 * all meals but one have entries and the energy is at least seven tenths of what was asked for.
 */
export function completeness(
  log: DayLog | undefined,
  eaten: EatenDay | undefined,
  meals: number,
  askedKcal: number,
): Completeness {
  if (log?.complete !== undefined)
    return { complete: log.complete, completeStated: true, everyMeal: log.complete };
  const everyMeal = (eaten?.meals.length ?? 0) >= meals - 1;
  const energy = eaten?.sum.known.energyKcal ?? 0;
  return { complete: everyMeal && energy >= ENOUGH_ENERGY * askedKcal, completeStated: false, everyMeal };
}
