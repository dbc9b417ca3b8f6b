import type { SeasonRecords } from '@platewright/core/views/season-records.ts';

/** `before` without the records named in `changed`, and with those of `fresh`; by id, as gatherSeason gives them. */
export function mergeSeasons(
  before: SeasonRecords,
  fresh: SeasonRecords,
  changed: ReadonlySet<string>,
): SeasonRecords {
  const merge = <T extends { id: string }>(old: readonly T[], added: readonly T[]): readonly T[] => {
    const kept = changed.size === 0 ? old : old.filter(({ id }) => !changed.has(id));
    if (added.length === 0) return kept;
    return [...kept, ...added].sort((a, b) => (a.id < b.id ? -1 : 1));
  };
  return {
    athlete: fresh.athlete,
    phases: merge(before.phases, fresh.phases),
    foods: merge(before.foods, fresh.foods),
    entries: merge(before.entries, fresh.entries),
    days: merge(before.days, fresh.days),
    weighIns: merge(before.weighIns, fresh.weighIns),
    tape: merge(before.tape, fresh.tape),
    calipers: merge(before.calipers, fresh.calipers),
    cycleStarts: merge(before.cycleStarts, fresh.cycleStarts),
    scaleShifts: merge(before.scaleShifts, fresh.scaleShifts),
    lifts: merge(before.lifts, fresh.lifts),
    liftSets: merge(before.liftSets, fresh.liftSets),
    calls: merge(before.calls, fresh.calls),
    standingMeals: merge(before.standingMeals, fresh.standingMeals),
  };
}
