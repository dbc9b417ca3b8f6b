export interface MeasurementError {
  /** Technical error of measurement, in the unit of the readings. */
  technical: number;
  /** The same in % of the mean reading. */
  percent: number;
  /** Two readings must differ by more than this to be a change, 95 %. */
  smallestDifference: number;
}

/** Error of readings taken twice: √(Σd²/2n). Ulijaszek SJ, Kerr DA. Br J Nutr 1999;82:165–177. NaN without pairs. */
export function measurementError(pairs: readonly (readonly [number, number])[]): MeasurementError {
  const squares = pairs.reduce((sum, [first, second]) => sum + (first - second) ** 2, 0);
  const mean = pairs.reduce((sum, [first, second]) => sum + first + second, 0) / (2 * pairs.length);
  const technical = Math.sqrt(squares / (2 * pairs.length));
  return { technical, percent: (100 * technical) / mean, smallestDifference: 1.96 * Math.SQRT2 * technical };
}
