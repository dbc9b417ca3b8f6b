import { median } from './robust.ts';

/** Where a residual stops counting in full: 95 % efficient on normal errors. Huber PJ. Robust Statistics, 1981 (from memory). */
const BEND = 1.345;
/** Median absolute deviation of a standard normal. */
const MAD_OF_NORMAL = 0.6744897501960817;
/** More rounds than any set of readings needs (common practice, no source). */
const MOST_ROUNDS = 50;

export interface HuberFit {
  /** One for each column. */
  coefficients: number[];
  /** Standard errors of the coefficients. */
  errors: number[];
  /** Robust standard deviation of the residuals. */
  scale: number;
  /** How much each row counted, 0 to 1. */
  weights: number[];
}

/**
 * Regression in which far-off rows count less: Huber's M-estimate by iteratively reweighted least squares, scale from the
 * median absolute residual, no smaller than `leastScale`. Huber PJ. Ann Math Stat 1964;35:73–101 (from memory). Rows hold the
 * regressors, a 1 for the intercept included. Null when the rows cannot tell the coefficients apart.
 */
export function huberFit(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  leastScale = 1e-12,
): HuberFit | null {
  let weights = y.map(() => 1);
  let fit = solveWeighted(rows, y, weights);
  if (!fit) return null;
  let scale = leastScale;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const residuals = residualsOf(rows, y, fit.coefficients);
    scale = Math.max(leastScale, median(residuals.map(Math.abs)) / MAD_OF_NORMAL);
    weights = residuals.map((residual) => Math.min(1, (BEND * scale) / Math.max(1e-300, Math.abs(residual))));
    const next = solveWeighted(rows, y, weights);
    if (!next) return null;
    const moved = next.coefficients.reduce(
      (most, value, index) => Math.max(most, Math.abs(value - (fit?.coefficients[index] ?? 0))),
      0,
    );
    fit = next;
    if (moved < 1e-10) break;
  }
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const freedom = Math.max(1, whole - fit.coefficients.length);
  // A median of few residuals is too small by the freedom the fit has used up.
  const widened = Math.max(leastScale, scale * Math.sqrt(y.length / freedom));
  return {
    coefficients: fit.coefficients,
    errors: fit.spread.map((variance) => widened * Math.sqrt(variance)),
    scale,
    weights,
  };
}

function residualsOf(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  coefficients: readonly number[],
): number[] {
  return rows.map(
    (row, index) =>
      (y[index] ?? 0) - row.reduce((sum, value, column) => sum + value * (coefficients[column] ?? 0), 0),
  );
}

/** Solves the weighted normal equations by Gauss–Jordan with pivoting; also the diagonal of the inverse. */
function solveWeighted(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  weights: readonly number[],
): { coefficients: number[]; spread: number[] } | null {
  const size = rows[0]?.length ?? 0;
  const table = Array.from({ length: size }, (_, i) =>
    Array.from({ length: 2 * size + 1 }, (_, j) => {
      if (j > size) return j - size - 1 === i ? 1 : 0;
      return rows.reduce((sum, row, index) => {
        const other = j < size ? (row[j] ?? 0) : (y[index] ?? 0);
        return sum + (weights[index] ?? 0) * (row[i] ?? 0) * other;
      }, 0);
    }),
  );
  for (let column = 0; column < size; column++) {
    const best = table
      .slice(column)
      .reduce((most, row) => (Math.abs(row[column] ?? 0) > Math.abs(most[column] ?? 0) ? row : most));
    const pivot = best[column] ?? 0;
    if (Math.abs(pivot) < 1e-12) return null;
    const from = table.indexOf(best);
    const displaced = table[column];
    if (displaced) table[from] = displaced;
    table[column] = best.map((value) => value / pivot);
    for (const [index, row] of table.entries()) {
      const factor = row[column] ?? 0;
      if (index !== column && factor !== 0)
        table[index] = row.map((value, at) => value - factor * (table[column]?.[at] ?? 0));
    }
  }
  return {
    coefficients: table.map((row) => row[size] ?? 0),
    spread: table.map((row, index) => row[size + 1 + index] ?? 0),
  };
}
