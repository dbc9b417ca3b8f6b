import { at } from './reading.ts';

/** Variances of the local level model y = level + noise, level' = level + step. */
export interface LevelVariances {
  noise: number;
  step: number;
}

/** Filtered and smoothed level; NaN in the readings means missing. */
export interface LevelTrack {
  predicted: Float64Array;
  predictedVar: Float64Array;
  filtered: Float64Array;
  filteredVar: Float64Array;
  smoothed: Float64Array;
  smoothedVar: Float64Array;
  /** Without the constant of the first reading, which the exact diffuse start takes up. */
  logLikelihood: number;
}

/** Filter with exact diffuse start: nothing is assumed of the first level. Durbin J, Koopman SJ 2012, 2nd edition, ch. 2 and 5. */
export function trackLevel(readings: Float64Array, variances: LevelVariances): LevelTrack {
  const count = readings.length;
  const column = () => new Float64Array(count).fill(Number.NaN);
  const track: LevelTrack = {
    predicted: column(),
    predictedVar: column(),
    filtered: column(),
    filteredVar: column(),
    smoothed: column(),
    smoothedVar: column(),
    logLikelihood: levelLikelihood(readings, variances),
  };
  let mean = 0;
  let variance = Number.POSITIVE_INFINITY;
  for (let t = 0; t < count; t++) {
    track.predicted[t] = mean;
    track.predictedVar[t] = variance;
    const y = at(readings, t);
    if (!Number.isNaN(y)) {
      if (variance === Number.POSITIVE_INFINITY) {
        mean = y;
        variance = variances.noise;
      } else {
        const gain = variance / (variance + variances.noise);
        mean += gain * (y - mean);
        variance *= 1 - gain;
      }
    }
    track.filtered[t] = mean;
    track.filteredVar[t] = variance;
    variance += variances.step;
  }
  smoothLevel(track, variances.step);
  return track;
}

function smoothLevel(track: LevelTrack, step: number): void {
  const last = track.filtered.length - 1;
  for (let t = last; t >= 0; t--) {
    const variance = at(track.filteredVar, t);
    if (t === last) {
      track.smoothed[t] = at(track.filtered, t);
      track.smoothedVar[t] = variance;
      continue;
    }
    // Before the first reading the filtered variance is infinite and the gain is one.
    const gain = variance === Number.POSITIVE_INFINITY ? 1 : variance / (variance + step);
    const ahead = at(track.smoothed, t + 1);
    const aheadVar = at(track.smoothedVar, t + 1);
    if (gain === 1) {
      track.smoothed[t] = ahead;
      track.smoothedVar[t] = aheadVar + step;
    } else {
      track.smoothed[t] = at(track.filtered, t) + gain * (ahead - at(track.filtered, t));
      track.smoothedVar[t] = variance + gain * gain * (aheadVar - variance - step);
    }
  }
}

/** Log-likelihood of the readings, exact diffuse, without the constant of the first one. */
export function levelLikelihood(readings: Float64Array, { noise, step }: LevelVariances): number {
  let mean = 0;
  let variance = Number.POSITIVE_INFINITY;
  let sum = 0;
  for (let t = 0; t < readings.length; t++) {
    const y = at(readings, t);
    if (!Number.isNaN(y)) {
      if (variance === Number.POSITIVE_INFINITY) {
        mean = y;
        variance = noise;
      } else {
        const spread = variance + noise;
        const miss = y - mean;
        sum -= (Math.log(2 * Math.PI * spread) + (miss * miss) / spread) / 2;
        mean += (variance / spread) * miss;
        variance -= (variance * variance) / spread;
      }
    }
    variance += step;
  }
  return sum;
}

/**
 * Most likely variances. The scale drops out of the likelihood (Durbin & Koopman 2012, §2.10.2), so one search over the
 * ratio step/noise is enough.
 */
export function likelyVariances(readings: Float64Array): LevelVariances {
  const scaled = (logRatio: number) => {
    const step = Math.exp(logRatio);
    const unit = levelLikelihood(readings, { noise: 1, step });
    const known = readings.reduce((n, y) => n + (Number.isNaN(y) ? 0 : 1), 0) - 1;
    const half = levelLikelihood(readings, { noise: 4, step: 4 * step });
    // Σv²/F at noise 1 from the likelihood at two scales: half − unit = −n·ln 4/2 + (1 − 1/4)·Σ/2.
    const squares = (half - unit + (known * Math.log(4)) / 2) / 0.375;
    const noise = squares / known;
    return { noise, step: step * noise };
  };
  const profile = (logRatio: number) => levelLikelihood(readings, scaled(logRatio));
  let low = -16;
  let high = 6;
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let round = 0; round < 80; round++) {
    const first = high - golden * (high - low);
    const second = low + golden * (high - low);
    if (profile(first) > profile(second)) high = second;
    else low = first;
  }
  return scaled((low + high) / 2);
}
