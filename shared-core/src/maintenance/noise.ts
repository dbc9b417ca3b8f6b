/** Noise levels of one athlete; standard deviations in kg. */
export interface NoiseLevels {
  /** Independent from reading to reading. */
  scaleSd: number;
  /** Water that carries over to the next days: spread at rest and the share that is left a day later. */
  waterSd: number;
  waterCarry: number;
}

/**
 * Spread of morning readings before there are data: 0.66 % of body mass. Cheuvront SN et al. Int J Sport Nutr Exerc Metab
 * 2004;14:532–540 (0.51 ± 0.20 kg, 0.66 ± 0.24 %).
 */
const usualSpread = 0.0066;
/** Standard deviation of the logarithm of a person's own spread: the same source's 0.24/0.66. */
const PERSONAL = 0.36;

/**
 * Grid: times the usual spread, from 3 standard deviations of the prior below it to 2 above, share that is water, share of
 * it left a day later (common practice, no source).
 */
const spreads = [0.3, 0.5, 0.75, 1.05, 1.45, 2];
const shares = [0.25, 0.5, 0.75];
const carries = [0.45, 0.75];

/**
 * Noise levels as the mean over a small grid, each point weighed by prior times likelihood of the athlete's own readings.
 * `logLikelihoodOf` runs the model with a grid point; `massKg` scales the prior.
 */
export function estimateNoise(massKg: number, logLikelihoodOf: (levels: NoiseLevels) => number): NoiseLevels {
  const points: { levels: NoiseLevels; log: number }[] = [];
  for (const spread of spreads)
    for (const share of shares)
      for (const waterCarry of carries) {
        const sd = spread * usualSpread * massKg;
        const levels = {
          scaleSd: sd * Math.sqrt(1 - share),
          waterSd: sd * Math.sqrt(share),
          waterCarry,
        };
        const prior = -((Math.log(spread) / PERSONAL) ** 2) / 2;
        points.push({ levels, log: prior + logLikelihoodOf(levels) });
      }
  const best = Math.max(...points.map((point) => point.log));
  const sum = { weight: 0, scaleVar: 0, waterVar: 0, waterCarry: 0 };
  for (const { levels, log } of points) {
    const weight = Math.exp(log - best);
    sum.weight += weight;
    sum.scaleVar += weight * levels.scaleSd ** 2;
    sum.waterVar += weight * levels.waterSd ** 2;
    sum.waterCarry += weight * levels.waterCarry;
  }
  return {
    scaleSd: Math.sqrt(sum.scaleVar / sum.weight),
    waterSd: Math.sqrt(sum.waterVar / sum.weight),
    waterCarry: sum.waterCarry / sum.weight,
  };
}

/** What is assumed with fewer readings than a grid can tell apart: half scale, half water (common practice, no source). */
export function usualNoise(massKg: number): NoiseLevels {
  const sd = usualSpread * massKg;
  return { scaleSd: sd * Math.SQRT1_2, waterSd: sd * Math.SQRT1_2, waterCarry: 0.6 };
}
