import { at } from '@platewright/core/maintenance/at.ts';

/** Variances of the local linear trend: y = level + noise, level' = level + slope + e, slope' = slope + e. */
interface TrendVariances {
  noise: number;
  level: number;
  slope: number;
}

/** Level and slope with their covariance (level·level, level·slope, slope·slope), row after row. */
interface TrendTrack {
  predicted: Float64Array;
  predictedCov: Float64Array;
  filtered: Float64Array;
  filteredCov: Float64Array;
  smoothed: Float64Array;
  smoothedCov: Float64Array;
  /** Without the constants of the readings that the diffuse start takes up. */
  logLikelihood: number;
}

/**
 * Filter and smoother with exact diffuse start, NaN for missing. Koopman SJ. J Am Stat Assoc 1997;92:1630–1638; recursion as
 * in Durbin & Koopman 2012, §5.2, written out for two states. Until two readings are in, the covariance columns hold the
 * finite part only.
 */
export function trackTrend(readings: Float64Array, variances: TrendVariances): TrendTrack {
  const count = readings.length;
  const track: TrendTrack = {
    predicted: new Float64Array(2 * count),
    predictedCov: new Float64Array(3 * count),
    filtered: new Float64Array(2 * count),
    filteredCov: new Float64Array(3 * count),
    smoothed: new Float64Array(2 * count),
    smoothedCov: new Float64Array(3 * count),
    logLikelihood: 0,
  };
  let level = 0;
  let slope = 0;
  let a = 0;
  let b = 0;
  let c = 0;
  // The diffuse part of the covariance; zero once two readings are in.
  let da = 1;
  let db = 0;
  let dc = 1;
  let firstProper = 0;
  for (let t = 0; t < count; t++) {
    store(track.predicted, track.predictedCov, t, level, slope, a, b, c);
    const y = at(readings, t);
    if (!Number.isNaN(y)) {
      const miss = y - level;
      const spread = a + variances.noise;
      if (da > DIFFUSE_END) {
        const k0 = 1;
        const k1 = db / da;
        level += k0 * miss;
        slope += k1 * miss;
        const nextB = b * (1 - k0) - k1 * a + k0 * k1 * spread;
        const nextC = c - 2 * k1 * b + k1 * k1 * spread;
        a = a - 2 * k0 * a + k0 * k0 * spread;
        b = nextB;
        c = nextC;
        dc -= k1 * db;
        da = 0;
        db = 0;
        if (dc <= DIFFUSE_END) dc = 0;
      } else {
        track.logLikelihood -= (Math.log(2 * Math.PI * spread) + (miss * miss) / spread) / 2;
        const k0 = a / spread;
        const k1 = b / spread;
        level += k0 * miss;
        slope += k1 * miss;
        c -= k1 * b;
        b -= k0 * b;
        a -= k0 * a;
      }
    }
    store(track.filtered, track.filteredCov, t, level, slope, a, b, c);
    if (da > DIFFUSE_END || dc > DIFFUSE_END) firstProper = t + 1;
    level += slope;
    a += 2 * b + c + variances.level;
    b += c;
    c += variances.slope;
    da += 2 * db + dc;
    db += dc;
  }
  smoothTrend(track, variances, firstProper);
  return track;
}

const DIFFUSE_END = 1e-9;

function store(
  means: Float64Array,
  covs: Float64Array,
  t: number,
  level: number,
  slope: number,
  a: number,
  b: number,
  c: number,
): void {
  means[2 * t] = level;
  means[2 * t + 1] = slope;
  covs[3 * t] = a;
  covs[3 * t + 1] = b;
  covs[3 * t + 2] = c;
}

/** Rauch–Tung–Striebel back to the first row whose covariance is finite; rows before it stay at zero. */
function smoothTrend(track: TrendTrack, variances: TrendVariances, first: number): void {
  const count = track.filtered.length / 2;
  let level = at(track.filtered, 2 * count - 2);
  let slope = at(track.filtered, 2 * count - 1);
  let a = at(track.filteredCov, 3 * count - 3);
  let b = at(track.filteredCov, 3 * count - 2);
  let c = at(track.filteredCov, 3 * count - 1);
  for (let t = count - 1; t >= first; t--) {
    if (t < count - 1) {
      const fa = at(track.filteredCov, 3 * t);
      const fb = at(track.filteredCov, 3 * t + 1);
      const fc = at(track.filteredCov, 3 * t + 2);
      const pa = fa + 2 * fb + fc + variances.level;
      const pb = fb + fc;
      const pc = fc + variances.slope;
      const det = pa * pc - pb * pb;
      // Gain = filtered · transitionᵀ · predicted⁻¹.
      const g00 = ((fa + fb) * pc - fb * pb) / det;
      const g01 = (fb * pa - (fa + fb) * pb) / det;
      const g10 = ((fb + fc) * pc - fc * pb) / det;
      const g11 = (fc * pa - (fb + fc) * pb) / det;
      const fl = at(track.filtered, 2 * t);
      const fs = at(track.filtered, 2 * t + 1);
      const dl = level - fl - fs;
      const ds = slope - fs;
      level = fl + g00 * dl + g01 * ds;
      slope = fs + g10 * dl + g11 * ds;
      const ea = a - pa;
      const eb = b - pb;
      const ec = c - pc;
      a = fa + g00 * g00 * ea + 2 * g00 * g01 * eb + g01 * g01 * ec;
      b = fb + g00 * g10 * ea + (g00 * g11 + g01 * g10) * eb + g01 * g11 * ec;
      c = fc + g10 * g10 * ea + 2 * g10 * g11 * eb + g11 * g11 * ec;
    }
    store(track.smoothed, track.smoothedCov, t, level, slope, a, b, c);
  }
}
