import { likelyVariances, trackLevel } from '@platewright/core/trend/local-level.ts';
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

describe('local level on the Nile', () => {
  const track = trackLevel(nile, { noise: 15099, step: 1469.1 });

  it('has the data of the book', () => {
    expect(nile.length).toBe(100);
    expect(nile.reduce((sum, y) => sum + y, 0)).toBe(91_935);
  });

  it('finds the variances of Durbin & Koopman 2012, p. 37', () => {
    const { noise, step } = likelyVariances(nile);
    expect(noise).toBeCloseTo(15098.5, 0);
    expect(step).toBeCloseTo(1469.2, 0);
  });

  it('has the log-likelihood that KFAS and statsmodels give', () => {
    expect(track.logLikelihood).toBeCloseTo(-632.5456, 4);
  });

  it('filters as the book does', () => {
    expect(track.predicted[1]).toBeCloseTo(1120, 6);
    expect(track.predictedVar[1]).toBeCloseTo(16568.1, 4);
    expect(track.filtered[1]).toBeCloseTo(1140.9278, 4);
    expect(track.filteredVar[1]).toBeCloseTo(7899.7364, 4);
    expect(track.filtered[2]).toBeCloseTo(1072.7985, 4);
    expect(track.predicted[9]).toBeCloseTo(1171.3012, 4);
    expect(track.predictedVar[99]).toBeCloseTo(5501.2579, 4);
    expect(track.filtered[99]).toBeCloseTo(798.3703, 4);
    expect(track.filteredVar[99]).toBeCloseTo(4032.1579, 4);
  });

  it('smooths as the book does', () => {
    const year = (y: number) => y - 1871;
    expect(track.smoothed[year(1871)]).toBeCloseTo(1111.6683, 4);
    expect(track.smoothedVar[year(1871)]).toBeCloseTo(4032.1579, 4);
    expect(track.smoothed[year(1898)]).toBeCloseTo(999.5852, 4);
    expect(track.smoothedVar[year(1898)]).toBeCloseTo(2326.757, 3);
    expect(track.smoothed[year(1899)]).toBeCloseTo(950.9301, 4);
    expect(track.smoothed[year(1913)]).toBeCloseTo(799.4533, 4);
    expect(track.smoothed[year(1970)]).toBeCloseTo(798.3703, 4);
  });

  it('holds the level and widens by one step a year across missing years (§2.7)', () => {
    const gappy = Float64Array.from(nile, (y, t) => (t >= 20 && t < 40 ? Number.NaN : y));
    const across = trackLevel(gappy, { noise: 15099, step: 1469.1 });
    expect(across.filtered[39]).toBe(across.filtered[19]);
    expect((across.filteredVar[39] ?? 0) - (across.filteredVar[19] ?? 0)).toBeCloseTo(20 * 1469.1, 6);
  });

  it('follows the R file of statsmodels for a short series', () => {
    const y = Float64Array.from([10.2394, 1, 1, 1, 1, 1, 1, 1, 1, 1]);
    const short = trackLevel(y, { noise: 1.993, step: 8.253 });
    expect(short.filtered[1]).toBeCloseTo(2.504544832, 8);
    // Noise × gain: 1.993 × 10.246 / 12.239.
    expect(short.filteredVar[1]).toBeCloseTo(1.668459678, 8);
    expect(short.logLikelihood).toBeCloseTo(-23.0163218509366, 8);
  });
});
