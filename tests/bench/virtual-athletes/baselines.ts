import type { CallInput } from '@platewright/core/call/input.ts';
import type { ModelDay } from '@platewright/core/maintenance/day-table.ts';
import type { Answer, Controller } from './run-types.ts';

/** Energy the trade reckons with for a kilogram (3,500 kcal a pound), common practice, no source for lean people. */
const KCAL_PER_KG = 7716;
/** Below this no baseline moves the mark. */
const LOWEST_MARK_G = 50;

/** One week's mean against the last, 25 g up or down on whichever side of the aim the difference lies. */
const weekAgainstWeek: Controller = (input) => {
  const weights = input.days.map((day) => day.weightKg);
  const last = mean(weights.slice(-7));
  const before = mean(weights.slice(-14, -7));
  if (last === null || before === null) return keep(input);
  const pace = (100 * (last - before)) / before;
  if (pace < input.aim.pacePercentPerWeek) return move(input, 25, pace);
  if (pace > input.aim.pacePercentPerWeek) return move(input, -25, pace);
  return move(input, 0, pace);
};

/** Straight line through three weeks of weights, step in proportion to the error of its slope. */
const threeWeekLine: Controller = (input) => {
  const points = input.days
    .slice(-21)
    .flatMap((day, index) => (day.weightKg === null ? [] : [{ x: index, y: day.weightKg }]));
  if (points.length < 5 || input.days.length < 14) return keep(input);
  const x = points.reduce((sum, point) => sum + point.x, 0) / points.length;
  const y = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  const up = points.reduce((sum, point) => sum + (point.x - x) * (point.y - y), 0);
  const down = points.reduce((sum, point) => sum + (point.x - x) ** 2, 0);
  return proportional(input, (700 * up) / down / y, y, 1);
};

/** Exponentially weighted line (a tenth of each new reading), its change over a week, step times `share`. */
const weightedLine =
  (share: number): Controller =>
  (input) => {
    const line = smooth(input.days, 0.1);
    const last = line.at(-1);
    const before = line.at(-8);
    if (last === undefined || before === undefined) return keep(input);
    return proportional(input, (100 * (last - before)) / before, last, share);
  };

/** Knows maintenance and average eating to the calorie; only luck and what comes after the call can hurt it. */
const oracle: Controller = (input, truth) => ({
  verdict: 'hold',
  carbohydrateG: Math.max(0, Math.round(truth.markForPace(input.aim.pacePercentPerWeek))),
});

const nothing: Controller = keep;

/** The controllers every other one is measured against. */
export const baselines: Readonly<Record<string, Controller>> = {
  nothing,
  'week against week ±25 g': weekAgainstWeek,
  '21-day line': threeWeekLine,
  'weighted line': weightedLine(1),
  'weighted line, 0.4 of the step': weightedLine(0.4),
  oracle,
};

function proportional(input: CallInput, pace: number, massKg: number, share: number): Answer {
  const { pacePercentPerWeek } = input.aim;
  const missingKcal = (((pacePercentPerWeek - pace) / 100) * massKg * KCAL_PER_KG) / 7;
  return move(input, (share * missingKcal) / 4, pace);
}

function move(input: CallInput, changeG: number, pace: number): Answer {
  const carbohydrateG = Math.max(LOWEST_MARK_G, Math.round(input.targets.carbohydrateG + changeG));
  return { verdict: changeG > 0 ? 'up' : changeG < 0 ? 'down' : 'hold', carbohydrateG, pace: point(pace) };
}

function keep(input: CallInput): Answer {
  return { verdict: 'not-enough', carbohydrateG: input.targets.carbohydrateG };
}

const point = (value: number) => ({ mean: value, low: value, high: value });

function smooth(days: readonly ModelDay[], weight: number): number[] {
  const line: number[] = [];
  let level: number | null = null;
  for (const { weightKg } of days) {
    if (weightKg !== null) level = level === null ? weightKg : level + weight * (weightKg - level);
    if (level !== null) line.push(level);
  }
  return line;
}

function mean(values: readonly (number | null)[]): number | null {
  const present = values.filter((value) => value !== null);
  if (present.length < 2) return null;
  return present.reduce((sum, value) => sum + value, 0) / present.length;
}
