import { readRecord } from '@platewright/core/changes/read.ts';
import { mayWrite } from '@platewright/core/protocol/rights.ts';
import type { Athlete } from '@platewright/core/records/kinds.ts';
import { localTime, minutesOn } from '@platewright/core/season/local-date.ts';
import { dayView } from '@platewright/core/views/day.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import { readHead } from '../../replica/head.ts';
import { athleteOf, type Note, readNote } from '../../replica/notes.ts';
import type { Reader, Reading } from '../../replica/reader.ts';
import type { Head } from '../../replica/rows.ts';
import { newestRecord, recordById, recordsBetween } from '../../replica/season.ts';
import { type Done, savedMeal } from './saved-meal.ts';

/** What the popup shows. All of it is in the replica, and none of it takes longer to read as years go by. */
export type PopupState =
  | { kind: 'unpaired'; choice: Note<'choice'> | null }
  | { kind: 'no-athlete'; address: string }
  /** The records are not here; `lost` when they were. */
  | { kind: 'fetching'; lost: boolean; waiting: number; sync: Note<'sync'> | null }
  | DayState;

export interface DayState {
  kind: 'day';
  athlete: Athlete;
  today: string;
  day: DayView;
  /** False where this browser may look only. */
  mayWrite: boolean;
  /** The meal of this date that was just saved here. */
  saved: Done | null;
  session: Note<'session'> | null;
  week: Note<'week'> | null;
  sync: Note<'sync'> | null;
  waiting: number;
  rejected: number;
}

/** Reads what the popup shows of a date; of the athlete's today when null. `now` in ms since 1970. */
export async function readPopup(reader: Reader, date: string | null, now: number): Promise<PopupState> {
  const state = await reader.read(async (reading): Promise<PopupState> => {
    const [head, choice, session, chosen] = await Promise.all([
      readHead(reading),
      readNote(reading, 'choice'),
      readNote(reading, 'session'),
      readNote(reading, 'athlete'),
    ]);
    if (head.device === null || choice !== null) return { kind: 'unpaired', choice };
    const id = athleteOf(session, chosen);
    const athlete = id === null ? null : await recordById(reading, id, 'athlete', id);
    if (athlete !== null) return await readDay(reading, head, athlete, session, date, now);
    if (session === null || (id !== null && head.seq === 0))
      return await readFetching(reading, session === null);
    return { kind: 'no-athlete', address: session.address };
  });
  return state ?? { kind: 'unpaired', choice: null };
}

async function readFetching(reading: Reading, lost: boolean): Promise<PopupState> {
  const [waiting, sync] = await Promise.all([reading.outboxCount('waiting'), readNote(reading, 'sync')]);
  return { kind: 'fetching', lost, waiting, sync };
}

async function readDay(
  reading: Reading,
  head: Head,
  athlete: Athlete,
  session: Note<'session'> | null,
  date: string | null,
  now: number,
): Promise<DayState> {
  const clock = localTime(now, athlete);
  const shown = date ?? clock.date;
  const [season, rows, week, sync, waiting, rejected] = await Promise.all([
    readSeason(reading, athlete, shown),
    reading.records(athlete.id, 'entry', shown, shown),
    readNote(reading, 'week'),
    readNote(reading, 'sync'),
    reading.outboxCount('waiting'),
    reading.outboxCount('rejected'),
  ]);
  const entries = rows.flatMap((row) => readRecord('entry', row) ?? []);
  const writes = mayWrite(head.rights, athlete.id);
  return {
    kind: 'day',
    athlete,
    today: clock.date,
    day: dayView({ ...season, entries }, shown, minutesOn(shown, clock)),
    mayWrite: writes,
    saved: writes ? savedMeal(rows, head.device, now) : null,
    session,
    week,
    sync,
    waiting,
    rejected,
  };
}

/** But for the entries, of one date, and of calls only the newest: that is all the view of a date looks at. */
async function readSeason(reading: Reading, athlete: Athlete, date: string) {
  const [phases, call, days] = await Promise.all([
    recordsBetween(reading, athlete.id, 'phase', '', ''),
    newestRecord(reading, athlete.id, 'weekly-call', date),
    recordsBetween(reading, athlete.id, 'day', date, date),
  ]);
  return { athlete, phases, calls: call === null ? [] : [call], days };
}
