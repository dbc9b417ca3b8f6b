import { repMax } from '../lifts/rep-max.ts';
import type { Known } from '../maintenance/model.ts';
import { waistCmPerFatKg } from '../maintenance/tape.ts';
import { z90 } from '../trend/normal.ts';
import { theilSen } from '../trend/robust.ts';
import { dayNumber } from '../units/day-number.ts';
import type { CallInput } from './input.ts';

/** What tape and lifts say about what the body is gaining or losing. */
export interface Composition {
  waist: WaistFinding | null;
  lifts: LiftFinding | null;
  /** Gaining, and the waist grows faster than the pace explains. */
  waistAhead: boolean;
  /** Losing, key lifts fall while the waist stands: probably muscle. */
  probablyMuscle: boolean;
}

interface WaistFinding {
  cmPerWeek: number;
  low: number;
  high: number;
  readings: number;
  /** What this pace explains when all of it were fat on the usual proportions, cm a week. */
  explainedCmPerWeek: number;
}

interface LiftFinding {
  /** Middle of the key lifts' trends, % a week. */
  percentPerWeek: number;
  falling: number;
  tracked: number;
}

/** How far back tape and lifts are read, fewest readings of each, and weeks that those of the waist must span (common practice, no source). */
const WAIST_DAYS = 56;
const LIFT_DAYS = 42;
const LEAST_READINGS = 4;
const WAIST_WEEKS = 3;
/** A waist that grows slower than this is not held against anyone, cm a week (common practice, no source). */
const WAIST_SLACK = 0.15;
/** A waist stands when it shrinks slower than this, and may well not shrink at all, cm a week (common practice, no source). */
const STANDS = { cmPerWeek: -0.15, high: -0.1 };
/** Rep maxes that fall slower than this, % a week, are luck (common practice, no source). */
const LIFT_FALL = -0.5;
/** One lift alone may fall for reasons of its own (common practice, no source). */
const LEAST_LIFTS = 2;

/** Reads tape and lifts of the last weeks beside the pace in kg a week. */
export function readComposition(input: CallInput, lastDay: number, pace: Known): Composition {
  const waist = readWaist(input, lastDay, pace);
  const lifts = readLifts(input, lastDay);
  const waistStands = waist !== null && waist.high > STANDS.high && waist.cmPerWeek > STANDS.cmPerWeek;
  return {
    waist,
    lifts,
    waistAhead: waist !== null && pace.mean > 0 && waist.low > waist.explainedCmPerWeek,
    probablyMuscle:
      pace.mean < 0 &&
      waistStands &&
      lifts !== null &&
      lifts.tracked >= LEAST_LIFTS &&
      lifts.falling * 2 >= lifts.tracked &&
      lifts.percentPerWeek < LIFT_FALL,
  };
}

function readWaist(input: CallInput, lastDay: number, pace: Known): WaistFinding | null {
  const points = input.waist
    .map(({ day, cm }) => ({ x: (dayNumber(day) - lastDay) / 7, y: cm }))
    .filter(({ x }) => x > -WAIST_DAYS / 7 && x <= 0);
  const first = points[0];
  if (points.length < LEAST_READINGS || first === undefined || first.x > -WAIST_WEEKS) return null;
  const line = theilSen(points, z90);
  if (line === null) return null;
  return {
    cmPerWeek: line.slope,
    low: line.low,
    high: line.high,
    readings: points.length,
    explainedCmPerWeek: waistCmPerFatKg.mean * Math.max(0, pace.mean + z90 * pace.sd) + WAIST_SLACK,
  };
}

function readLifts(input: CallInput, lastDay: number): LiftFinding | null {
  const byLift = new Map<string, { x: number; y: number }[]>();
  for (const set of input.keyLifts) {
    const x = (dayNumber(set.day) - lastDay) / 7;
    const once = repMax(set.loadKg, set.repetitions);
    if (x <= -LIFT_DAYS / 7 || x > 0 || once === null) continue;
    const points = byLift.get(set.lift) ?? [];
    points.push({ x, y: Math.log(once.kg) });
    byLift.set(set.lift, points);
  }
  const trends: { slope: number; high: number }[] = [];
  for (const points of byLift.values()) {
    if (points.length < LEAST_READINGS) continue;
    const line = theilSen(points, z90);
    if (line !== null) trends.push({ slope: 100 * line.slope, high: 100 * line.high });
  }
  if (trends.length === 0) return null;
  const slopes = trends.map(({ slope }) => slope).sort((a, b) => a - b);
  return {
    percentPerWeek: slopes[Math.floor((slopes.length - 1) / 2)] ?? 0,
    falling: trends.filter(({ high }) => high < 0).length,
    tracked: trends.length,
  };
}
