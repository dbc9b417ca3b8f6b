import type { NutrientSum } from '../foods/nutrients.ts';
import { datesUpTo, daysBetween } from '../season/dates.ts';
import { type Asked, askedOn } from '../targets/asked.ts';
import { median } from '../trend/robust.ts';
import { type Completeness, completeness } from './completeness.ts';
import { eatenDay } from './eaten-day.ts';
import type { SeasonRecords } from './season-records.ts';

/** A date of the past: what stood on the scale, what was eaten and what was asked for. */
export interface DayRow extends Completeness {
  date: string;
  /** Median of the date's weigh-ins. */
  weightKg: number | null;
  /** Null when nothing was logged. */
  eaten: NutrientSum | null;
  asked: Asked;
}

/** Every date from `from` to `to`, oldest first, none left out. */
export function dayRows(
  records: Pick<SeasonRecords, 'athlete' | 'phases' | 'calls' | 'entries' | 'eaten' | 'days' | 'weighIns'>,
  from: string,
  to: string,
): DayRow[] {
  const within = <T extends { date: string }>(items: readonly T[]) =>
    Map.groupBy(
      items.filter(({ date }) => date >= from && date <= to),
      ({ date }) => date,
    );
  const eaten = new Map((records.eaten ?? []).map((day) => [day.date, day]));
  for (const [date, entries] of within(records.entries)) eaten.set(date, eatenDay(date, entries));
  const logs = within(records.days);
  const weighIns = within(records.weighIns);
  const turns = new Set([
    ...records.calls.map(({ date }) => date),
    ...records.phases.map((phase) => phase.from),
  ]);
  let asked: Asked | null = null;
  return datesUpTo(to, daysBetween(from, to) + 1).map((date) => {
    // What is asked changes only at a turn, and ten years have few of them.
    if (asked === null || turns.has(date)) asked = askedOn(records, date);
    const kg = weighIns.get(date)?.map((weighIn) => weighIn.kg);
    return {
      date,
      weightKg: kg === undefined ? null : median(kg),
      eaten: eaten.get(date)?.sum ?? null,
      asked,
      ...completeness(logs.get(date)?.[0], eaten.get(date), records.athlete.meals, asked.energyKcal),
    };
  });
}
