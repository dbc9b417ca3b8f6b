import { setImmediate as breathe } from 'node:timers/promises';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { readRecord } from '@platewright/core/changes/read.ts';
import type { Athlete } from '@platewright/core/records/kinds.ts';
import { localDate } from '@platewright/core/season/local-date.ts';
import type { RosterRow, RosterView } from '@platewright/core/views/roster.ts';
import type { Store } from '../store/store.ts';
import type { Athletes } from './athletes.ts';
import { createRosterRows } from './roster-rows.ts';
import type { Seasons } from './seasons.ts';

/** Athletes of one part: each costs a weekly call. */
const ROWS = 20;

interface Parts {
  store: Store;
  seasons: Seasons;
  athletes: Athletes;
  /** ms since 1970. */
  now(): number;
}

export type Roster = ReturnType<typeof createRoster>;

/** How the athletes stand, some at a time. */
export function createRoster({ store, seasons, athletes, now }: Parts) {
  const rowOf = createRosterRows({ store, seasons });
  let isReadAhead = false;

  /** The athletes whose ids come after `after`: of all, or of the one named. */
  async function part(athlete: string | undefined, after: string): Promise<RosterView> {
    const next = firstAfter(await athletes.of(athlete), after, ROWS + 1);
    const rows: RosterRow[] = [];
    for (const athlete of next.slice(0, ROWS)) {
      rows.push(await rowOf(athlete, localDate(now(), athlete)));
      // Other requests get their turn.
      await breathe();
    }
    return { rows, more: next.length > ROWS };
  }

  return {
    part,

    /** Reads, once, what the first part of all takes, which after a start is a second or two: soon somebody looks at it. */
    readAhead(): void {
      if (isReadAhead) return;
      isReadAhead = true;
      // Whoever looks at it is told of trouble.
      part(undefined, '').catch(() => undefined);
    },
  };
}

/** So many athletes whose ids come after one; their records are by id. */
function firstAfter(records: readonly StoredRecord[], after: string, count: number): Athlete[] {
  const found: Athlete[] = [];
  for (const record of records) {
    const athlete = record.id > after ? readRecord('athlete', record) : null;
    if (athlete !== null && found.push(athlete) === count) break;
  }
  return found;
}
