import { huberFit } from '@platewright/core/trend/huber.ts';
import { theilSen } from '@platewright/core/trend/robust.ts';
import { describe, expect, it } from 'vitest';

describe('Theil–Sen', () => {
  // Sen PK. J Am Stat Assoc 1968;63:1379–1389, example with its printed 93 % interval; also in SciPy's tests.
  it('gives the slope and interval of Sen 1968', () => {
    const x = [1, 2, 3, 4, 10, 12, 18];
    const y = [9, 15, 19, 20, 45, 55, 78];
    const line = theilSen(
      x.map((value, index) => ({ x: value, y: y[index] ?? 0 })),
      1.8119106729525978,
    );
    expect(line?.slope).toBe(4);
    expect(line?.intercept).toBe(4);
    expect(line?.low).toBeCloseTo(3.7143, 4);
    expect(line?.high).toBe(4.375);
  });

  // SciPy stats/tests, theilslopes of [0, 1, 1].
  it('gives the slope of three points', () => {
    const line = theilSen(
      [0, 1, 1].map((y, x) => ({ x, y })),
      1.96,
    );
    expect(line?.slope).toBe(0.5);
    expect(line?.intercept).toBe(0.5);
  });

  it('has nothing to say of one moment', () => {
    expect(
      theilSen(
        [
          { x: 1, y: 1 },
          { x: 1, y: 2 },
        ],
        1.96,
      ),
    ).toBeNull();
  });
});

// Brownlee's stack loss data: air flow, water temperature, acid, loss.
const stackLoss = [
  [80, 27, 89, 42],
  [80, 27, 88, 37],
  [75, 25, 90, 37],
  [62, 24, 87, 28],
  [62, 22, 87, 18],
  [62, 23, 87, 18],
  [62, 24, 93, 19],
  [62, 24, 93, 20],
  [58, 23, 87, 15],
  [58, 18, 80, 14],
  [58, 18, 89, 14],
  [58, 17, 88, 13],
  [58, 18, 82, 11],
  [58, 19, 93, 12],
  [50, 18, 89, 8],
  [50, 18, 86, 7],
  [50, 19, 72, 8],
  [50, 19, 79, 8],
  [50, 20, 80, 9],
  [56, 20, 82, 15],
  [70, 20, 91, 15],
] as const;

describe('Huber regression', () => {
  const rows = stackLoss.map(([air, water, acid]) => [air, water, acid, 1]);
  const loss = stackLoss.map((row) => row[3]);

  // R and SAS values in statsmodels' results_rlm.py, Huber k = 1.345 with MAD scale.
  it('gives the published fit of the stack loss data', () => {
    const fit = huberFit(rows, loss);
    const published = [0.82937387, 0.92610818, -0.12784916, -41.02653105];
    for (const [index, value] of published.entries())
      expect(Math.abs((fit?.coefficients[index] ?? 0) - value)).toBeLessThan(1e-4);
    expect(fit?.scale).toBeCloseTo(2.44071379, 3);
    expect(fit?.weights[20]).toBeCloseTo(0.36814106, 3);
    expect(fit?.weights[3]).toBeCloseTo(0.50494094, 3);
    // Run to the end of its iteration, where R stops a little before.
    expect(fit?.coefficients[0]).toBeCloseTo(0.829384, 5);
    expect(fit?.coefficients[3]).toBeCloseTo(-41.026498, 4);
  });

  // R's lm on the same data, stackloss help page.
  it('is ordinary least squares when nothing is far off', () => {
    const fit = huberFit(rows, loss, 1000);
    const ordinary = [0.71564, 1.295286, -0.152123, -39.919674];
    for (const [index, value] of ordinary.entries()) expect(fit?.coefficients[index]).toBeCloseTo(value, 5);
  });

  it('has nothing to say when the rows cannot tell the columns apart', () => {
    expect(
      huberFit(
        [
          [1, 2],
          [2, 4],
          [3, 6],
        ],
        [1, 2, 3],
      ),
    ).toBeNull();
  });
});
