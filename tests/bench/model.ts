import type { CallInput } from '@platewright/core/call/input.ts';
import { type DayTable, layOutDays } from '@platewright/core/maintenance/days.ts';
import { liveDay, readMorning, runFilter } from '@platewright/core/maintenance/filter.ts';
import { fitModel } from '@platewright/core/maintenance/model.ts';
import { trackTrend } from '@platewright/core/trend/local-linear.ts';
import library from 'kalman-filter';
import { seededRandom } from './virtual-athletes/random.ts';

export interface ModelBench {
  /** Fit, filter and smoother over 3,650 days, median, ms. */
  fullMs: number;
  /** One more day in a running filter, median, ms. */
  dayMs: number;
  /** Two-state filter and smoother over 3,650 readings, median, ms; and the npm package's filter alone. */
  trendMs: number;
  packageMs: number;
  ratio: number;
  /** Largest difference of the filtered states between the two. */
  difference: number;
}

const DAYS = 3650;
const person = { sex: 'male', ageYears: 30, heightCm: 180 } as const;
const plan = { proteinG: 270, carbohydrateG: 400, fatG: 80 };

/** Measures the model in the same run as the package it is compared with, and prints the medians. */
export function benchModel(): ModelBench {
  const days = tenYears();
  const fullMs = median(9, () => fitModel(person, days, plan));
  const { filter } = fitModel(person, days, plan);
  const table = layOutDays(days, plan, 3000);
  const { setup } = filter;
  const running = runFilter(setup, table).filter;
  let row = 0;
  const dayMs = median(999, () => {
    readMorning(running, table, row);
    liveDay(running, table, row);
    row = (row + 1) % table.count;
  });
  const plain = plainTwoState(table);
  const result = { fullMs, dayMs, ...plain };
  console.log(
    `model over ${DAYS} days: ${fullMs.toFixed(1)} ms; one more day: ${dayMs.toFixed(4)} ms; ` +
      `two states: ${plain.trendMs.toFixed(3)} ms against ${plain.packageMs.toFixed(1)} ms of kalman-filter ` +
      `(${plain.ratio.toFixed(0)} times), largest difference ${plain.difference.toExponential(1)}`,
  );
  return result;
}

/** Level and slope by ours and by the package, on the same readings from the same start. */
function plainTwoState(table: DayTable): Omit<ModelBench, 'fullMs' | 'dayMs'> {
  const readings = table.weightKg.map((kg, index) => (Number.isNaN(kg) ? 85 + index * 1e-4 : kg));
  const variances = { noise: 0.25, level: 0.01, slope: 1e-4 };
  const track = trackTrend(readings, variances);
  // The package has no diffuse start: it gets ours after two readings.
  const [level, slope] = [track.predicted[4] ?? 0, track.predicted[5] ?? 0];
  const [a, b, c] = [track.predictedCov[6] ?? 0, track.predictedCov[7] ?? 0, track.predictedCov[8] ?? 0];
  const filter = new library.KalmanFilter({
    observation: { dimension: 1, stateProjection: [[1, 0]], covariance: [[variances.noise]] },
    dynamic: {
      init: {
        mean: [[level], [slope]],
        covariance: [
          [a, b],
          [b, c],
        ],
        index: -1,
      },
      dimension: 2,
      transition: [
        [1, 1],
        [0, 1],
      ],
      covariance: [
        [variances.level, 0],
        [0, variances.slope],
      ],
    },
  });
  // The start is the prediction for the third reading, so the first step of the package must only correct.
  const run = () => {
    let state = filter.correct({ predicted: filter.getInitState(), observation: [readings[2] ?? 0] });
    const states = [state.mean.map(([value]) => value ?? 0)];
    for (let t = 3; t < readings.length; t++) {
      state = filter.filter({ previousCorrected: state, observation: [readings[t] ?? 0] });
      states.push(state.mean.map(([value]) => value ?? 0));
    }
    return states;
  };
  const states = run();
  let difference = 0;
  for (const [index, [theirLevel = 0, theirSlope = 0]] of states.entries()) {
    const t = index + 2;
    difference = Math.max(
      difference,
      Math.abs(theirLevel - (track.filtered[2 * t] ?? 0)),
      Math.abs(theirSlope - (track.filtered[2 * t + 1] ?? 0)),
    );
  }
  const trendMs = median(25, () => trackTrend(readings, variances));
  const packageMs = median(5, run);
  return { trendMs, packageMs, ratio: packageMs / trendMs, difference };
}

function tenYears(): CallInput['days'] {
  const random = seededRandom(7);
  let kg = 85;
  return Array.from({ length: DAYS }, (_, index) => {
    kg += (85 - kg) / 200 + 0.02 * random.normal();
    const weighed = !random.chance(0.1);
    const logged = !random.chance(0.1);
    const carbohydrateG = 400 + 40 * random.normal();
    return {
      day: new Date(Date.UTC(2015, 0, 1) + index * 86_400_000).toISOString().slice(0, 10),
      weightKg: weighed ? Math.round(10 * (kg + 0.5 * random.normal())) / 10 : null,
      intake: logged ? { ...plan, carbohydrateG, complete: true } : null,
      prescribed: plan,
    };
  });
}

function median(rounds: number, run: () => void): number {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    run();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return times[rounds >> 1] ?? Number.NaN;
}
