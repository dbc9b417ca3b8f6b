export interface Point {
  x: number;
  y: number;
}

export interface RobustLine {
  slope: number;
  intercept: number;
  /** Ends of the interval of the slope. */
  low: number;
  high: number;
}

/** Middle value; the mean of the two in the middle when they are even in number. NaN for none. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? Number.NaN) + upper) / 2;
}

/**
 * Line whose slope is the median of all slopes between two points: up to 29 % of the points may be wild.
 * Sen PK. J Am Stat Assoc 1968;63:1379–1389, interval included; `z` is half its width in standard normal deviations.
 * Null when no two points differ in x.
 */
export function theilSen(points: readonly Point[], z: number): RobustLine | null {
  const slopes: number[] = [];
  for (const [index, first] of points.entries())
    for (const second of points.slice(index + 1))
      if (first.x !== second.x) slopes.push((second.y - first.y) / (second.x - first.x));
  if (slopes.length === 0) return null;
  slopes.sort((a, b) => a - b);
  const slope = median(slopes);
  const intercept = median(points.map(({ y }) => y)) - slope * median(points.map(({ x }) => x));
  const reach = z * Math.sqrt(varianceOfConcordance(points));
  const last = slopes.length - 1;
  const low = slopes[Math.max(0, Math.round((slopes.length - reach) / 2) - 1)] ?? slope;
  const high = slopes[Math.min(last, Math.round((slopes.length + reach) / 2))] ?? slope;
  return { slope, intercept, low, high };
}

/** Variance of Kendall's count of agreeing less disagreeing pairs, ties taken off. Sen 1968, equation 2.6. */
function varianceOfConcordance(points: readonly Point[]): number {
  const term = (count: number) => (count * (count - 1) * (2 * count + 5)) / 18;
  const tied = (values: readonly number[]) => {
    const counts = new Map<number, number>();
    for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
    return [...counts.values()].reduce((sum, count) => sum + term(count), 0);
  };
  const ties = tied(points.map(({ x }) => x)) + tied(points.map(({ y }) => y));
  return Math.max(0, term(points.length) - ties);
}
