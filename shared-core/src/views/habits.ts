import { type FoodHabit, habitsOf, type Occasion } from '../foods/ranking.ts';
import type { Training } from '../records/athlete.ts';
import type { Entry } from '../records/kinds.ts';
import { addDays } from '../season/dates.ts';
import { kindOfDay } from '../season/kind-of-day.ts';
import type { SeasonRecords } from './season-records.ts';

/** How far back habits are looked for; older ones weigh next to nothing (see `weightOf` in ranking). */
const HABIT_DAYS = 56;

/** What the typed line of a date is read with, so that it means the same wherever it is typed. */
export interface HabitsView {
  athlete: string;
  date: string;
  /** For each meal of the day, what is eaten at it of each food of the last weeks. */
  meals: readonly (readonly FoodHabit[])[];
  /** The same of all meals and kinds of day alike, for a standing meal. */
  anyMeal: readonly FoodHabit[];
}

/** The first date whose entries are habits on a date. */
export function habitsSince(date: string): string {
  return addDays(date, -HABIT_DAYS);
}

/** The entries that are habits on a date, in one order whatever order they came in. */
export function recentEntries(entries: readonly Entry[], date: string): Entry[] {
  const since = habitsSince(date);
  return entries
    .filter((entry) => entry.date >= since && entry.date <= date)
    .sort((a, b) => (a.date + a.id < b.date + b.id ? -1 : 1));
}

/** A meal of a date that is about to be logged. */
export function occasionOf(training: Training, date: string, meal: number): Occasion {
  // Ranking asks for the same few dates thousands of times.
  const known = new Map<string, string>();
  const kindOf = (on: string) => {
    const kind = known.get(on) ?? kindOfDay(training, on);
    known.set(on, kind);
    return kind;
  };
  return { date, meal, kindOf };
}

/** The habits of a date, meal by meal. Of entries only the last weeks are looked at, so none before need be loaded. */
export function habitsView(records: Pick<SeasonRecords, 'athlete' | 'entries'>, date: string): HabitsView {
  const { athlete } = records;
  const recent = recentEntries(records.entries, date);
  return {
    athlete: athlete.id,
    date,
    meals: Array.from({ length: athlete.meals }, (_, i) =>
      habitsOf(recent, occasionOf(athlete.training, date, i + 1)),
    ),
    anyMeal: habitsOf(recent, { date, meal: null, kindOf: () => 'any' }),
  };
}
