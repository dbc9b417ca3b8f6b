import type { Athlete } from '@platewright/core/records/kinds.ts';
import { type RosterRow, rosterRow } from '@platewright/core/views/roster.ts';
import type { Store } from '../store/store.ts';
import { callSeason } from './season.ts';
import type { Seasons } from './seasons.ts';

interface Held {
  /** Number of the last change of which it is known whether it is in the row. */
  seq: number;
  date: string;
  row: RosterRow;
}

/** Rows of the roster, each held until its athlete's records or date change, because each costs a weekly call. */
export function createRosterRows({ store, seasons }: { store: Store; seasons: Seasons }) {
  const held = new Map<string, Held>();

  async function isAsItWas(athlete: string, before: Held): Promise<boolean> {
    const page = await store.changesSince(before.seq, 1, athlete);
    if (page === 'folded' || page.changes.length > 0) return false;
    held.set(athlete, { ...before, seq: page.seq });
    return true;
  }

  /** The row of an athlete on a date. */
  return async ({ id }: Athlete, date: string): Promise<RosterRow> => {
    const before = held.get(id);
    if (before?.date === date && (await isAsItWas(id, before))) return before.row;
    const seq = await store.lastSeq();
    const row = rosterRow(await callSeason(seasons, id), date);
    held.set(id, { seq, date, row });
    return row;
  };
}
