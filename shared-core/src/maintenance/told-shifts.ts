import { dayNumber } from '../units/day-number.ts';
import type { DayTable, ToldShift } from './day-table.ts';

/** How far two scales differ, standard deviation as a share of body mass (common practice, no source). */
const SCALE_SD = 0.05;
/**
 * Creatine binds 1 to 2 kg of water: in a week when loaded, in three to four at 3 g a day. Kreider RB et al. J Int Soc Sports Nutr
 * 2017;14:18 (from memory). As a standard deviation, share of body mass, with the most of it in the first days.
 */
const CREATINE = { sd: 0.018, days: 28, keep: 0.85 };

/** Writes into the table how far the zero may move by what was told: variances, kg². A told day off the table says nothing. */
export function tellShifts(table: DayTable, shifts: readonly ToldShift[], massKg: number): void {
  const loosen = (row: number, variance: number) => {
    // On the first row there is nothing to have moved from.
    if (row > 0 && row < table.count) table.shiftVar[row] = (table.shiftVar[row] ?? 0) + variance;
  };
  for (const { day, cause } of shifts) {
    const row = dayNumber(day) - table.firstDay;
    if (cause === 'another scale') loosen(row, (SCALE_SD * massKg) ** 2);
    else
      for (let after = 0; after < CREATINE.days; after++)
        loosen(row + after, (1 - CREATINE.keep) * CREATINE.keep ** after * (CREATINE.sd * massKg) ** 2);
  }
}
