/** 95th percentile of the standard normal: half the width of a 90 % interval in standard deviations. */
export const z90 = 1.6448536269514722;

/** Probability that a standard normal lies below z; Abramowitz & Stegun 1964, 26.2.17 (from memory), error under 7.5e-8. */
export function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = 0.3989422804014327 * Math.exp((-z * z) / 2) * series;
  return z > 0 ? 1 - tail : tail;
}
