import { at } from './at.ts';
import { type DayTable, has } from './day-table.ts';
import { FEW_LOGS } from './days.ts';

/** How the athlete eats against the plan, as far as the log shows. */
export interface Eating {
  /** Logged energy on an average day over what the plan asks, as the call reckons with it. */
  habit: number;
  habitSd: number;
  /** Days logged in full of the last 14. */
  loggedDays: number;
}

/** A log's weight halves in so many days (common practice, no source). */
const HALF_LIFE = 42;
/** Most athletes keep to the plan within 2 %; one in four has a constant deviation of up to some 15 % (common practice, no source). */
const FAITHFUL_SD = 0.02;
const DEVIATING_SD = 0.12;
const DEVIATING_SHARE = 0.25;
/** Least spread of single days (common practice, no source). */
const LEAST_DAY_SD = 0.04;
/** Weeks differ from one another by luck: a standard deviation that a whole week shares (common practice, no source). */
const WEEK_SD = 0.02;
/** One day's log over the plan counts as no further off than this (common practice, no source). */
const ODD_DAY = { low: 0.2, high: 2 };

/** Reckons the habit from the days that were logged in full and had a plan, the newer the weightier. */
export function eatingHabit(table: DayTable): Eating {
  const forget = 0.5 ** (1 / HALF_LIFE);
  let weight = 0;
  let weightSquares = 0;
  let sum = 0;
  let squares = 0;
  let loggedDays = 0;
  let days = 0;
  for (let row = 0; row < table.count; row++) {
    weight *= forget;
    weightSquares *= forget * forget;
    sum *= forget;
    squares *= forget;
    if (!has(table.loggedKcal, row) || !has(table.prescribedKcal, row)) continue;
    const ratio = at(table.loggedKcal, row) / at(table.prescribedKcal, row);
    const gap = Math.max(ODD_DAY.low, Math.min(ODD_DAY.high, ratio)) - 1;
    days++;
    weight++;
    weightSquares++;
    sum += gap;
    squares += gap * gap;
    if (row >= table.count - 14) loggedDays++;
  }
  if (days < FEW_LOGS) return { habit: 1, habitSd: DEVIATING_SHARE ** 0.5 * DEVIATING_SD, loggedDays };
  const mean = sum / weight;
  const effective = weight ** 2 / weightSquares;
  const dayVar = Math.max(LEAST_DAY_SD ** 2, squares / weight - mean ** 2);
  const meanVar = dayVar / effective + WEEK_SD ** 2 / Math.max(1, effective / 7);
  return { ...shrink(mean, meanVar), loggedDays };
}

/** Two kinds of athletes, weighed by how well each explains the mean. */
function shrink(mean: number, meanVar: number): { habit: number; habitSd: number } {
  const kinds = [
    { share: 1 - DEVIATING_SHARE, prior: FAITHFUL_SD ** 2 },
    { share: DEVIATING_SHARE, prior: DEVIATING_SD ** 2 },
  ].map(({ share, prior }) => {
    const total = prior + meanVar;
    return {
      weight: (share / Math.sqrt(total)) * Math.exp((-mean * mean) / (2 * total)),
      mean: (mean * prior) / total,
      variance: (prior * meanVar) / total,
    };
  });
  const all = kinds.reduce((sum, kind) => sum + kind.weight, 0);
  const habit = kinds.reduce((sum, kind) => sum + kind.weight * kind.mean, 0) / all;
  const variance = kinds.reduce(
    (sum, kind) => sum + kind.weight * (kind.variance + (kind.mean - habit) ** 2),
    0,
  );
  return { habit: 1 + habit, habitSd: Math.sqrt(variance / all) };
}
