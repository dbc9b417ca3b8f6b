import { at } from './at.ts';
import { type DayTable, has } from './day-table.ts';
import { fatAfter } from './energy-density.ts';
import { stepShare } from './filter.ts';
import type { FilterSetup } from './open-filter.ts';

/** One filter that starts at a row: maintenance may be another than at the start (wider by half; common practice, no source), and steps are not looked for. */
export function startingAt(setup: FilterSetup, table: DayTable, first: number): FilterSetup {
  const startMassKg = first === 0 ? setup.startMassKg : firstReading(table, first);
  const { search } = setup;
  return {
    ...setup,
    startMassKg,
    startFatKg: fatAfter(setup.startFatKg, startMassKg - setup.startMassKg),
    maintenance: { ...setup.maintenance, sd: 1.5 * setup.maintenance.sd },
    search: { ...search, hypotheses: 1 },
    firstWaistCm: Number.NaN,
    driftVar: setup.driftVar + stepShare(search),
  };
}

/** The first weigh-in from a row on, kg; there must be one. */
export function firstReading({ weightKg, count }: DayTable, from: number): number {
  let row = from;
  while (row < count - 1 && !has(weightKg, row)) row++;
  return at(weightKg, row);
}
