import { nextMark } from '../lifts/next-mark.ts';
import { bestOfDays, epleyKg, repMax } from '../lifts/rep-max.ts';
import { repMaxTrend } from '../lifts/rep-max-trend.ts';
import type { Lift, LiftSet } from '../records/kinds.ts';
import { addDays, daysBetween } from '../season/dates.ts';
import { z90 } from '../trend/normal.ts';
import { weeksPerMonth } from '../units/percent.ts';
import { unitsOf } from '../units/reader.ts';
import type { LiftsView, LiftView, RepMaxNow, RepMaxTrendView, SetView } from './lifts-types.ts';
import { newestFirst } from './order.ts';
import type { SeasonRecords } from './season-records.ts';

/** Sessions of so many days make the trend: long enough for plates of 2.5 kg to show (common practice, no source). */
const TREND_DAYS = 84;
const CHART_DAYS = 182;

/** The lifts with their sets up to a date: rep max, where it is heading, and the set to beat. */
export function liftsView(
  { athlete, lifts, liftSets }: Pick<SeasonRecords, 'athlete' | 'lifts' | 'liftSets'>,
  date: string,
): LiftsView {
  const upTo = liftSets.filter((set) => set.date <= date);
  const byLift = Map.groupBy(upTo, (set) => set.lift);
  return {
    athlete: athlete.id,
    date,
    units: unitsOf(athlete),
    lifts: lifts
      .map((lift) => liftView(lift, (byLift.get(lift.id) ?? []).toSorted(newestFirst), date))
      .sort(keyLiftsFirst),
  };
}

function keyLiftsFirst(a: LiftView, b: LiftView): number {
  if (a.key !== b.key) return a.key ? -1 : 1;
  return a.name + a.id < b.name + b.id ? -1 : 1;
}

function liftView({ id, name, key, smallestStepKg }: Lift, records: LiftSet[], date: string): LiftView {
  const sets = records.map(({ id, date, loadKg, repetitions }) => ({ id, date, loadKg, repetitions }));
  const trend = trendOf(sets, addDays(date, -TREND_DAYS));
  const beat = bestOfNewestDate(sets);
  return {
    ...{ id, name, key, smallestStepKg, sets, trend },
    repMax: repMaxNow(sets, trend),
    points: bestOfEachDate(sets.filter((set) => set.date > addDays(date, -CHART_DAYS))),
    nextMark: beat && nextMark(beat.loadKg, beat.repetitions, smallestStepKg),
  };
}

function trendOf(sets: readonly SetView[], after: string): RepMaxTrendView | null {
  const trend = repMaxTrend(
    sets.filter((set) => set.date > after).map((set) => ({ ...set, day: daysBetween(after, set.date) })),
  );
  if (trend === null) return null;
  const { mean, interval90 } = trend.percentPerWeek;
  return {
    sessions: trend.sessions,
    percentPerMonth: {
      mean: weeksPerMonth * mean,
      interval90: { low: weeksPerMonth * interval90.low, high: weeksPerMonth * interval90.high },
    },
    line: trend.line.map(({ day, kg }) => ({ date: addDays(after, Math.round(day)), kg })),
  };
}

/**
 * The end of the trend, so that one bad session does not turn it. Its error is how unsure the line is there together with
 * the spread between people that the newest set has; a single has none of that.
 */
function repMaxNow(sets: readonly SetView[], trend: RepMaxTrendView | null): RepMaxNow | null {
  const of = bestOfNewestDate(sets.filter((set) => repMax(set.loadKg, set.repetitions) !== null));
  const found = of && repMax(of.loadKg, of.repetitions);
  if (!of || !found) return null;
  const end = trend?.line.at(-1)?.kg;
  const mean = end?.mean ?? found.kg;
  const between = (mean * z90 * found.sdKg) / found.kg;
  const low = mean - Math.hypot(between, mean - (end?.interval90.low ?? mean));
  const high = mean + Math.hypot(between, (end?.interval90.high ?? mean) - mean);
  return { kg: { mean, interval90: { low, high } }, of };
}

/** By Epley also where no rep max is told, because only the order counts; with no load on the bar by repetitions. */
function bestOfNewestDate(sets: readonly SetView[]): SetView | null {
  const worth = ({ loadKg, repetitions }: SetView) => epleyKg(loadKg, repetitions);
  const session = sets.filter((set) => set.date === sets[0]?.date);
  return session.toSorted((a, b) => worth(b) - worth(a) || b.repetitions - a.repetitions)[0] ?? null;
}

function bestOfEachDate(sets: readonly SetView[]): LiftView['points'] {
  return [...bestOfDays(sets, ({ date }) => date)].map(([date, { kg }]) => ({ date, kg })).reverse();
}
