import { at } from './at.ts';
import { type DayTable, has } from './day-table.ts';
import { RESPONSE_START } from './open-filter.ts';
import { firstReading } from './starting-at.ts';

/** Readings that are set side by side, fewest of them, and days in which those after a row must lie (common practice, no source). */
const BESIDE = 7;
const FEWEST = 3;
const AFTER_DAYS = 7;
/** A difference of two means under so many of its standard errors, with water counted as luck of single days, may be luck (common practice, no source). */
const LUCK = 4;

/** By how much the mean reading of the days from each row on differs from that of the readings before, kg; 0 where luck may do it. */
export function meanMoves(table: DayTable): Float64Array {
  const rows: number[] = [];
  const sum = [0];
  const squares = [0];
  const level = firstReading(table, 0);
  for (let row = 0; row < table.count; row++) {
    if (!has(table.weightKg, row)) continue;
    const kg = at(table.weightKg, row) - level - RESPONSE_START.mean * at(table.knownWaterKg, row);
    sum.push((sum[rows.length] ?? 0) + kg);
    squares.push((squares[rows.length] ?? 0) + kg ** 2);
    rows.push(row);
  }
  const between = (sums: readonly number[], from: number, to: number) => (sums[to] ?? 0) - (sums[from] ?? 0);
  const mean = (from: number, to: number) => between(sum, from, to) / (to - from);
  const spread = (from: number, to: number) => between(squares, from, to) - (to - from) * mean(from, to) ** 2;
  const moves = new Float64Array(table.count);
  let to = 0;
  for (const [index, row] of rows.entries()) {
    while (to < rows.length && to < index + BESIDE && (rows[to] ?? 0) < row + AFTER_DAYS) to++;
    const from = Math.max(0, index - BESIDE);
    const [before, after] = [index - from, to - index];
    if (before < FEWEST || after < FEWEST) continue;
    const move = mean(index, to) - mean(from, index);
    const variance = (spread(from, index) + spread(index, to)) / (before + after - 2);
    if (Math.abs(move) > LUCK * Math.sqrt(variance * (1 / before + 1 / after))) moves[row] = move;
  }
  return moves;
}
