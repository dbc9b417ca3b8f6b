import { sessionMinutes } from '../maintenance/energy-availability.ts';
import type { KindOfDay } from '../season/kind-of-day.ts';
import { endOfDay, minutesAfterWake, minutesOf } from '../season/time-of-day.ts';
import { roundTo } from '../units/round.ts';
import type { PlannedMeal } from './types.ts';

/** The athlete's clock: times are `HH:MM`. */
export interface EatingDay {
  /** 3 to 8. */
  meals: number;
  wake: string;
  sleep: string;
  trainingTime: string;
}

/** A meal's time in minutes since the date's midnight, and what it is for. */
export interface MealTime {
  minutes: number;
  role: PlannedMeal['role'];
}

/**
 * Minutes around a session; common practice, no source: a full meal two to three hours before, a small one about an hour
 * before, protein with quick carbohydrate a quarter of an hour after. (Iraki et al. 2019 ask for protein within one to two
 * hours before and after; Helms et al. 2014 for 0.4 to 0.5 g/kg before and after, without a time.)
 */
const before = { usual: 150, latest: 120 } as const;
const smallBefore = { usual: 60, latest: 30 } as const;
const afterStart = sessionMinutes + 15;
/** With fewer meals there is no room for a small one beside the full one. */
const mealsForSmall = 4;
/** First meal after waking, last meal before sleep, and the least time between two meals, in minutes. */
const afterWake = 30;
const beforeSleep = 60;
const leastGap = 45;
/** Minutes of the night's fast that count when the day's gaps are made even. */
const nightBefore = 120;
const nightAfter = 60;

/** Times of the day's meals, in order, all between wake and sleep, in whole five minutes. */
export function mealTimes(day: EatingDay, kind: KindOfDay): MealTime[] {
  const wake = minutesOf(day.wake);
  const sleep = endOfDay(day);
  const training = withinWaking(minutesAfterWake(day.trainingTime, day.wake), wake, sleep);
  const times =
    kind === 'recovery'
      ? evenly(day.meals, wake, sleep)
      : (aroundSession(day.meals, wake, sleep, training) ??
        markSession(evenly(day.meals, wake, sleep), training));
  return times.map(({ minutes, role }) => ({
    minutes: Math.min(sleep, Math.max(wake, roundTo(minutes, 5))),
    role,
  }));
}

/** A session in the hours of sleep counts as one on waking or before sleep, whichever is nearer. */
function withinWaking(training: number, wake: number, sleep: number): number {
  if (training <= sleep) return training;
  return training - sleep < wake + 24 * 60 - training ? sleep : wake;
}

function evenly(meals: number, wake: number, sleep: number): MealTime[] {
  const roomy = sleep - wake >= meals * leastGap + afterWake + beforeSleep;
  const first = roomy ? wake + afterWake : wake;
  const last = roomy ? sleep - beforeSleep : sleep;
  return Array.from({ length: meals }, (_, i) => ({
    minutes: first + (i * (last - first)) / (meals - 1),
    role: 'meal',
  }));
}

/** Meals that keep their distance from the session; the others spread over what is left. Null when there is no room. */
function aroundSession(meals: number, wake: number, sleep: number, training: number): MealTime[] | null {
  const fixed = sessionMeals(meals, wake, sleep, training);
  const first = fixed.at(0);
  const last = fixed.at(-1);
  if (first === undefined || last === undefined) return null;
  const others = meals - fixed.length;
  const options = Array.from({ length: others + 1 }, (_, early) => [
    ...spread(early, wake + afterWake, first.minutes),
    ...fixed,
    ...spread(others - early, sleep - beforeSleep, last.minutes).reverse(),
  ]).filter((times) => gaps(times).every((gap) => gap >= leastGap));
  // The night is a gap as well: its two ends weigh more than their minutes awake.
  const unevenness = (times: readonly MealTime[]) =>
    gaps([{ minutes: wake - nightBefore }, ...times, { minutes: sleep + nightAfter }]).reduce(
      (sum, gap) => sum + gap ** 2,
      0,
    );
  return options.sort((a, b) => unevenness(a) - unevenness(b))[0] ?? null;
}

function sessionMeals(meals: number, wake: number, sleep: number, training: number): MealTime[] {
  const times: MealTime[] = [];
  const full = Math.max(wake, training - before.usual);
  if (training - full >= before.latest) times.push({ minutes: full, role: 'before training' });
  const small = Math.max(wake, training - smallBefore.usual);
  if (meals >= mealsForSmall && training - small >= smallBefore.latest) {
    times.push({ minutes: small, role: 'small, before training' });
  }
  const after = Math.min(training + afterStart, sleep);
  if (after > training) times.push({ minutes: after, role: 'after training' });
  return times;
}

/** `count` meals at even distances from `from` on, stopping one distance short of `to`. */
function spread(count: number, from: number, to: number): MealTime[] {
  return Array.from({ length: count }, (_, i) => ({
    minutes: from + (i * (to - from)) / count,
    role: 'meal',
  }));
}

function gaps(times: readonly Pick<MealTime, 'minutes'>[]): number[] {
  return times.slice(1).map(({ minutes }, i) => minutes - (times[i]?.minutes ?? 0));
}

/** A day too short for distances still says which meals stand next to the session. */
function markSession(times: MealTime[], training: number): MealTime[] {
  const next = times.findIndex(({ minutes }) => minutes > training);
  return times.map(({ minutes, role }, i) => {
    if (i === next) return { minutes, role: 'after training' };
    const isLastBefore = next === -1 ? i === times.length - 1 : i === next - 1;
    return { minutes, role: isLastBefore ? 'before training' : role };
  });
}
