import { readRecord } from '@platewright/core/changes/read.ts';
import type { Athlete, Kind } from '@platewright/core/records/kinds.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { gatherSeason } from '@platewright/core/views/gather.ts';
import { habitsSince } from '@platewright/core/views/habits.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import type { RecordQuery, Store } from '../store/store.ts';
import type { Athletes } from './athletes.ts';
import { ProblemError } from './problem.ts';
import type { Seasons } from './seasons.ts';

type Want = RecordQuery & { kind: Kind };

const LARDER_KINDS: readonly Kind[] = ['food', 'standing-meal'];

/** What the weekly call looks at, of all dates. */
export async function callSeason(seasons: Seasons, athlete: string): Promise<SeasonRecords> {
  return required(await seasons.of(athlete));
}

/** What the larder is made of. */
export function larderSeason(store: Store, athlete: string): Promise<SeasonRecords> {
  return partOfSeason(
    store,
    athlete,
    LARDER_KINDS.map((kind) => ({ kind })),
  );
}

/** What habits on a date are made of: the entries of the weeks before it, however many years there are. */
export function habitsSeason(store: Store, athlete: string, date: string): Promise<SeasonRecords> {
  return partOfSeason(store, athlete, [{ kind: 'entry', from: habitsSince(date), to: date }]);
}

/** What a date's lifts are made of. */
export function liftsSeason(store: Store, athlete: string, date: string): Promise<SeasonRecords> {
  return partOfSeason(store, athlete, [{ kind: 'lift' }, { kind: 'lift-set', to: date }]);
}

/**
 * What a date's targets and meals follow from, and no more, so that a day costs the same after twenty years. Of the
 * calls only the newest counts: a year back is enough, unless none was decided in it.
 */
export async function daySeason(store: Store, athlete: string, date: string): Promise<SeasonRecords> {
  const wants: Want[] = [
    { kind: 'phase' },
    { kind: 'entry', from: date, to: date },
    { kind: 'day', from: date, to: date },
  ];
  const recent = { kind: 'weekly-call', from: addDays(date, -366), to: date } as const;
  const season = await partOfSeason(store, athlete, [...wants, recent]);
  if (season.calls.length > 0) return season;
  return await partOfSeason(store, athlete, [...wants, { kind: 'weekly-call', to: date }]);
}

/** The athlete asked for, else the first one. */
export async function athleteOf(athletes: Athletes, asked: string | undefined): Promise<Athlete> {
  let found: Athlete | null = null;
  for (const record of await athletes.of(asked)) found ??= readRecord('athlete', record);
  return required(found);
}

async function partOfSeason(store: Store, athlete: string, wants: readonly Want[]): Promise<SeasonRecords> {
  const found = [await store.record(athlete, athlete)].filter((record) => record !== null);
  for (const want of wants) found.push(...(await store.records({ ...want, athlete })));
  return required(gatherSeason(found, athlete));
}

function required<T>(found: T | null | undefined): T {
  if (found !== null && found !== undefined) return found;
  throw new ProblemError(404, 'no-athlete', {
    detail: 'There is no such athlete here yet. Set one up on the dashboard.',
  });
}
