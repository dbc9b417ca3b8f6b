import type { Aim } from '@platewright/core/call/input.ts';
import { type Diligence, tidy } from './life.ts';

export interface Stretch {
  weeks: number;
  aim: Aim;
}

export interface Scenario {
  name: string;
  stretches: readonly Stretch[];
  diligence: Diligence;
}

const gain: Aim = { phase: 'off-season', pacePercentPerWeek: 0.35, band: { low: 0.2, high: 0.5 } };
const lose: Aim = { phase: 'pre-contest', pacePercentPerWeek: -0.7, band: { low: -0.9, high: -0.5 } };
const hold: Aim = { phase: 'hold', pacePercentPerWeek: 0, band: { low: -0.15, high: 0.15 } };

const courses: Readonly<Record<string, readonly Stretch[]>> = {
  gain: [{ weeks: 26, aim: gain }],
  loss: [{ weeks: 16, aim: lose }],
  'hold-gain': [
    { weeks: 12, aim: hold },
    { weeks: 14, aim: gain },
  ],
};

const messy: Diligence = {
  missingWeights: 0.3,
  missingLogs: 0.3,
  halfLogs: 0.03,
  underReport: 0.15,
  eatsByLog: true,
};

/** `messy` eats until the log is full; `unlogged` eats what was prescribed and logs 15 % less. */
const diligences: Readonly<Record<string, Diligence>> = {
  clean: tidy,
  messy,
  unlogged: { ...messy, eatsByLog: false },
};

/** Every course with every kind of log, named `gain clean`, `loss messy` … */
export const scenarios: readonly Scenario[] = Object.entries(courses).flatMap(([course, stretches]) =>
  Object.entries(diligences).map(([kept, diligence]) => ({
    name: `${course} ${kept}`,
    stretches,
    diligence,
  })),
);
