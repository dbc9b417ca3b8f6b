import { describe, expect, it } from 'vitest';
import { trackTrend } from '../support/local-linear.ts';

/** Analytic results of Koopman 1997 and the R file results_exact_initial_local_linear_trend of statsmodels. */
describe('local linear trend with exact diffuse start', () => {
  const variances = { noise: 1.993, level: 8.253, slope: 2.334 };
  const y = [10.2394, 4.2039, 6.123123, 1, 1, 1, 1, 1, 1, 1];
  const track = trackTrend(Float64Array.from(y), variances);

  it('predicts the third state as 2y2 − y1 and y2 − y1 with Koopman’s covariance', () => {
    expect(track.predicted[2]).toBeCloseTo(10.2394, 10);
    expect(track.predicted[3]).toBeCloseTo(0, 10);
    expect(track.predicted[4]).toBeCloseTo(-1.8316, 10);
    expect(track.predicted[5]).toBeCloseTo(-6.0355, 10);
    expect([...track.predictedCov.slice(6, 9)].map((v) => Number(v.toFixed(6)))).toEqual([
      28.805, 16.566, 16.907,
    ]);
  });

  it('filters and adds up the likelihood as R does', () => {
    expect(track.filtered[4]).toBeCloseTo(5.60835701068251, 9);
    expect(track.filtered[5]).toBeCloseTo(-1.75671757198519, 9);
    expect(track.predicted[6]).toBeCloseTo(3.851639, 5);
    expect(track.logLikelihood).toBeCloseTo(-21.1364983872324, 9);
  });

  it('bridges a missing second reading', () => {
    const gap = trackTrend(Float64Array.from([10, Number.NaN, 4, 1]), variances);
    expect(gap.predicted[6]).toBeCloseTo(1.5 * 4 - 0.5 * 10, 10);
    expect(gap.predicted[7]).toBeCloseTo(0.5 * 4 - 0.5 * 10, 10);
  });

  it('smooths a straight line to itself', () => {
    const line = Float64Array.from({ length: 20 }, (_, t) => 80 + 0.1 * t);
    const smooth = trackTrend(line, { noise: 0.25, level: 0.001, slope: 0.0001 });
    for (let t = 1; t < 20; t++) {
      expect(smooth.smoothed[2 * t]).toBeCloseTo(80 + 0.1 * t, 8);
      expect(smooth.smoothed[2 * t + 1]).toBeCloseTo(0.1, 8);
    }
  });
});
