import { layOutDays } from '@platewright/core/maintenance/days.ts';
import { usualNoise } from '@platewright/core/maintenance/noise.ts';
import { openFilter } from '@platewright/core/maintenance/open-filter.ts';
import { smooth } from '@platewright/core/maintenance/smoother.ts';
import {
  correct,
  linearise,
  MASS,
  PLAIN_SIZE,
  predict,
  seenBy,
  sightCovariance,
} from '@platewright/core/maintenance/state.ts';
import { isoDay } from '@platewright/core/units/day-number.ts';
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
const plainSight = { knownWaterKg: 0, weekCos: 0, weekSin: 0, cycleCos: 0, cycleSin: 0, zero: -1 };
/** So little tissue for each kcal that only luck moves it: mass becomes a local level. */
const NO_EFFECT = 1e-12;

/** The model's own steps from morning to morning, and back, run as a local level: mass alone is uncertain. */
function runOnNile(noise: number, step: number, startVar: number) {
  const { length } = nile;
  const plan = { proteinG: 0, carbohydrateG: 0, fatG: 0 };
  const days = Array.from(nile, (_, row) => ({
    day: isoDay(row),
    weightKg: null,
    intake: null,
    prescribed: null,
  }));
  const table = layOutDays(days, plan, 0);
  table.energyVar.fill(step / NO_EFFECT ** 2);
  table.knownWaterKg.fill(0);
  const filter = openFilter({
    startMassKg: 0,
    startFatKg: 1,
    maintenance: { kcal: 0, sd: 0 },
    surplusEffect: 1,
    noise: usualNoise(0),
    search: { hypotheses: 1, everyDays: 1, chance: 0, stepVar: 0 },
    driftVar: 0,
    cycle: false,
    firstWaistCm: Number.NaN,
    zeroMoves: false,
  });
  const { mean, cov } = filter.bank;
  const { move } = filter;
  mean.fill(0);
  cov.fill(0);
  const own = MASS * (PLAIN_SIZE + 1);
  cov[own] = startVar;
  move.waterVar = 0;
  move.kgPerKcal = NO_EFFECT;
  move.massVar = step;
  const track = {
    size: PLAIN_SIZE,
    means: new Float64Array(length * PLAIN_SIZE),
    covs: new Float64Array(length * PLAIN_SIZE ** 2),
    kgPerKcal: new Float64Array(length).fill(NO_EFFECT),
    weighIn: new Uint8Array(length),
  };
  const gain = new Float64Array(PLAIN_SIZE);
  let logLikelihood = 0;
  const filtered = Array.from(nile, (y, row) => {
    const spread = sightCovariance(cov, 0, PLAIN_SIZE, plainSight, gain) + noise;
    const miss = y - seenBy(plainSight, mean, 0, PLAIN_SIZE);
    logLikelihood -= (Math.log(2 * Math.PI * spread) + miss ** 2 / spread) / 2;
    correct(mean, 0, cov, 0, PLAIN_SIZE, gain, miss, spread);
    track.means.set(mean, row * PLAIN_SIZE);
    track.covs.set(cov, row * PLAIN_SIZE ** 2);
    const level = { mean: mean[MASS] ?? Number.NaN, variance: cov[own] ?? Number.NaN };
    linearise(mean, 0, move);
    predict(mean, 0, cov, 0, PLAIN_SIZE, move);
    return level;
  });
  return { filtered, logLikelihood, smoothed: () => smooth(filter, track, table) };
}

/** Where a function of one number is largest between two bounds, by golden section. */
function largestAt(of: (x: number) => number, low: number, high: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [from, to] = [low, high];
  while (to - from > 1e-5) {
    const width = ratio * (to - from);
    if (of(to - width) > of(from + width)) to = from + width;
    else from = to - width;
  }
  return (from + to) / 2;
}

describe('the steps of the model, on the Nile (Durbin & Koopman 2012)', () => {
  const { filtered, logLikelihood, smoothed } = runOnNile(15099, 1469.1, 1e7);

  it('have the log-likelihood of statsmodels for a start variance of 10⁷', () => {
    expect(logLikelihood).toBeCloseTo(-641.5856, 4);
  });

  it('are likeliest at the variances of page 37, 15,099 and 1,469.1', () => {
    const bestNoise = (logStep: number) =>
      largestAt((logNoise) => runOnNile(Math.exp(logNoise), Math.exp(logStep), 1e7).logLikelihood, 9, 10.5);
    const logStep = largestAt(
      (x) => runOnNile(Math.exp(bestNoise(x)), Math.exp(x), 1e7).logLikelihood,
      6.5,
      8,
    );
    expect(Math.exp(logStep) / 1469.1).toBeCloseTo(1, 2);
    expect(Math.exp(bestNoise(logStep)) / 15099).toBeCloseTo(1, 3);
  });

  it('filter as the book does, once the start is forgotten', () => {
    expect(filtered[0]?.mean).toBeCloseTo(1118.3115, 4);
    expect(filtered[0]?.variance).toBeCloseTo(15076.2364, 4);
    expect(filtered[99]?.mean).toBeCloseTo(798.3703, 4);
    expect(filtered[99]?.variance).toBeCloseTo(4032.1579, 4);
  });

  it('smooth as the book does', () => {
    const { tissue, tissueVar } = smoothed();
    const in1898 = 27;
    expect(tissue[in1898]).toBeCloseTo(999.5852, 3);
    expect(tissueVar[in1898]).toBeCloseTo(2326.757, 2);
    expect(tissue[28]).toBeCloseTo(950.9301, 3);
    expect(tissue[42]).toBeCloseTo(799.4533, 3);
    expect(tissue[99]).toBeCloseTo(798.3703, 3);
    expect(tissueVar[99]).toBeCloseTo(4032.1579, 2);
  });
});
