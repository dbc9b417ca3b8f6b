import {
  correct,
  expectedReading,
  MASS,
  PLAIN_SIZE,
  sightCovariance,
} from '@platewright/core/maintenance/state.ts';
import { describe, expect, it } from 'vitest';

/** Annual flow of the Nile at Aswan, 1871 to 1970, 10⁸ m³; as in Durbin & Koopman 2012 and statsmodels datasets/nile. */
const nile = Float64Array.from(
  (
    '1120 1160 963 1210 1160 1160 813 1230 1370 1140 995 935 1110 994 1020 960 1180 799 958 1140 1100 1210 1150 1250 ' +
    '1260 1220 1030 1100 774 840 874 694 940 833 701 916 692 1020 1050 969 831 726 456 824 702 1120 1100 832 764 821 ' +
    '768 845 864 862 698 845 744 796 1040 759 781 865 845 944 984 897 822 1010 771 676 649 846 812 742 801 1040 860 ' +
    '874 848 890 744 749 838 1050 918 986 797 923 975 815 1020 906 901 1170 912 746 919 718 714 740'
  )
    .split(' ')
    .map(Number),
);

/** A morning on which the scale sees mass alone: no water known, no rhythm. */
const plainSight = { knownWaterKg: 0, weekCos: 0, weekSin: 0, cycleCos: 0, cycleSin: 0 };

/** The model's own step of reading the scale, run as a local level: mass alone is uncertain, and steps from day to day. */
function runOnNile(noise: number, step: number, startVar: number) {
  const mean = new Float64Array(PLAIN_SIZE);
  const cov = new Float64Array(PLAIN_SIZE ** 2);
  const gain = new Float64Array(PLAIN_SIZE);
  const own = MASS * (PLAIN_SIZE + 1);
  cov[own] = startVar;
  let logLikelihood = 0;
  const filtered = Array.from(nile, (y) => {
    const spread = sightCovariance(cov, 0, PLAIN_SIZE, plainSight, gain) + noise;
    const miss = y - expectedReading(mean, 0, PLAIN_SIZE, plainSight);
    logLikelihood -= (Math.log(2 * Math.PI * spread) + miss ** 2 / spread) / 2;
    correct(mean, 0, cov, 0, PLAIN_SIZE, gain, miss, spread);
    const level = { mean: mean[MASS] ?? Number.NaN, variance: cov[own] ?? Number.NaN };
    cov[own] = level.variance + step;
    return level;
  });
  return { filtered, logLikelihood };
}

describe('the step by which the model reads the scale, on the Nile (Durbin & Koopman 2012)', () => {
  const { filtered, logLikelihood } = runOnNile(15099, 1469.1, 1e7);

  it('has the log-likelihood of statsmodels for a start variance of 10⁷', () => {
    expect(logLikelihood).toBeCloseTo(-641.5856, 4);
  });

  it('filters as the book does, once the start is forgotten', () => {
    expect(filtered[0]?.mean).toBeCloseTo(1118.3115, 4);
    expect(filtered[0]?.variance).toBeCloseTo(15076.2364, 4);
    expect(filtered[99]?.mean).toBeCloseTo(798.3703, 4);
    expect(filtered[99]?.variance).toBeCloseTo(4032.1579, 4);
  });
});
