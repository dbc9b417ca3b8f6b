import type { Training } from '../records/athlete.ts';
import { daysBetween, isoWeekday } from './dates.ts';

/** The kind of day a date is in the training cycle. */
export type KindOfDay = 'session' | 'recovery';

/** Whether the athlete trains on a date: by its weekday, or by its place in a cycle that repeats both ways from its start. */
export function kindOfDay(training: Training, date: string): KindOfDay {
  if (training.kind === 'weekdays') {
    return training.days.includes(isoWeekday(date)) ? 'session' : 'recovery';
  }
  const length = training.days.length;
  const place = ((daysBetween(training.start, date) % length) + length) % length;
  return training.days[place] ?? 'recovery';
}
