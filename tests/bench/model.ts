import type { CallInput } from '@platewright/core/call/input.ts';
import type { DayTable } from '@platewright/core/maintenance/day-table.ts';
import { layOutDays } from '@platewright/core/maintenance/days.ts';
import { liveDay, readMorning, runFilter } from '@platewright/core/maintenance/filter.ts';
import { fitModel } from '@platewright/core/maintenance/model.ts';
import library from 'kalman-filter';
import { trackTrend } from '../support/local-linear.ts';
import { type Compared, median, printTable } from './table.ts';
import { seededRandom } from './virtual-athletes/random.ts';

const DAYS = 3650;
/** What the model may take on a middling machine, ms. */
const MOST_FULL_MS = 25;
const MOST_DAY_MS = 0.2;
/** Of the same states on the same readings. */
const MOST_DIFFERENCE = 1e-8;
const person = { sex: 'male', ageYears: 30, heightCm: 180 } as const;
const plan = { proteinG: 270, carbohydrateG: 400, fatG: 80 };

/** Measures the model in the same run as the package it is compared with; medians. */
export function benchModel(): Compared[] {
  const days = tenYears();
  const fullMs = medianOf(9, () => fitModel(person, days, plan));
  const { filter } = fitModel(person, days, plan);
  const table = layOutDays(days, plan, 3000);
  const { setup } = filter;
  const running = runFilter(setup, table).filter;
  let row = 0;
  const dayMs = medianOf(999, () => {
    readMorning(running, table, row);
    liveDay(running, table, row);
    row = (row + 1) % table.count;
  });
  const plain = plainTwoState(table);
  if (plain.difference > MOST_DIFFERENCE) throw new Error(`the two filters differ by ${plain.difference}`);
  const what = `model over ${DAYS} days`;
  return [
    { what, unit: 'ms', ours: fullMs, reference: 'what it may take', theirs: MOST_FULL_MS },
    {
      what: `${what}, one more`,
      unit: 'ms',
      ours: dayMs,
      reference: 'what it may take',
      theirs: MOST_DAY_MS,
    },
    {
      what: `two states over ${DAYS} days`,
      unit: 'ms',
      ours: plain.trendMs,
      reference: 'kalman-filter',
      theirs: plain.packageMs,
    },
  ];
}

/** Level and slope by ours and by the package, on the same readings from the same start. */
function plainTwoState(table: DayTable): { trendMs: number; packageMs: number; difference: number } {
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
  const trendMs = medianOf(25, () => trackTrend(readings, variances));
  const packageMs = medianOf(5, run);
  return { trendMs, packageMs, difference };
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

function medianOf(rounds: number, run: () => void): number {
  return median(
    Array.from({ length: rounds }, () => {
      const start = performance.now();
      run();
      return performance.now() - start;
    }),
  );
}

if (import.meta.main) printTable(benchModel());
