import { setImmediate as breathe } from 'node:timers/promises';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { readRecord } from '@platewright/core/changes/read.ts';
import type { Entry } from '@platewright/core/records/kinds.ts';
import { type EatenDay, eatenDay } from '@platewright/core/views/eaten-day.ts';
import { gatherSeason } from '@platewright/core/views/gather.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import type { Store } from '../store/store.ts';
import { mergeSeasons } from './merge-seasons.ts';
import { createTurns } from './turns.ts';

/** Seasons held at a time: as many as a page of the roster asks for. One of ten years takes about 5 MB. */
const MOST_HELD = 20;
/** Records read before other requests get their turn; few, so that little is held that is thrown away. */
const PAGE = 250;

/** No weekly call looks at these, and of entries only at what a date's come to. */
const LEFT_OUT = new Set(['food', 'standing-meal', 'photo', 'entry']);

interface Held {
  /** Number of the last change that is in it. */
  seq: number;
  /** Without entries. */
  season: SeasonRecords;
  eaten: Map<string, EatenDay>;
  /**
   * The ids of a date's entries, because one that is moved leaves a date that must be added up again. As one text with a
   * blank around each, which takes a quarter of the memory of a map.
   */
  ids: Map<string, string>;
}

export type Seasons = ReturnType<typeof createSeasons>;

/**
 * What weekly calls look at, in memory, because a call looks at years of records: the log tells which records changed
 * since, and only those are read again.
 */
export function createSeasons(store: Store) {
  const held = new Map<string, Held>();
  const inTurn = createTurns();

  /** Records with their athlete, without whom there is no season. */
  async function gather(records: readonly StoredRecord[], athlete: string): Promise<SeasonRecords | null> {
    const own = await store.record(athlete, athlete);
    const others = records.filter(({ id, kind }) => id !== athlete && !LEFT_OUT.has(kind));
    return gatherSeason(own === null ? others : [...others, own], athlete);
  }

  async function load(athlete: string): Promise<Held | null> {
    const seq = await store.lastSeq();
    const begun = await gather([], athlete);
    if (begun === null) return null;
    const next: Held = { seq, season: begun, eaten: new Map(), ids: new Map() };
    for (let after = ''; ; ) {
      const page = await store.records({ athlete, after, limit: PAGE });
      const last = page.at(-1);
      if (last === undefined) return next;
      addEntries(next, page);
      const more = await gather(page, athlete);
      if (more === null) return null;
      next.season = mergeSeasons(next.season, more, new Set());
      after = last.id;
      await breathe();
    }
  }

  /** The season with what was written since; null when its athlete was removed. */
  async function follow(before: Held): Promise<Held | null> {
    const athlete = before.season.athlete.id;
    const page = await store.changesSince(before.seq, PAGE, athlete);
    if (page === 'folded') return await load(athlete);
    const changed = new Set(page.changes.map(({ record }) => record));
    if (changed.size === 0 && !page.more) return { ...before, seq: page.seq };
    const found = await Promise.all([...changed].map((id) => store.record(athlete, id)));
    const records = found.filter((record) => record !== null);
    const fresh = await gather(records, athlete);
    if (fresh === null) return null;
    const next = { ...before, seq: page.seq, season: mergeSeasons(before.season, fresh, changed) };
    for (const date of datesOf(next, records)) {
      next.eaten.delete(date);
      next.ids.delete(date);
      addEntries(next, await store.records({ athlete, kind: 'entry', from: date, to: date }));
    }
    return page.more ? await follow(next) : next;
  }

  return {
    /** The season of an athlete as it stands, its entries added up; null when there is no such athlete. */
    of: (athlete: string): Promise<SeasonRecords | null> =>
      inTurn(async () => {
        const before = held.get(athlete) ?? (await load(athlete));
        // Of one that failed half-way nothing is kept.
        held.delete(athlete);
        const now = before === null ? null : await follow(before);
        if (now === null) return null;
        held.set(athlete, now);
        const [oldest] = held.keys();
        if (held.size > MOST_HELD && oldest !== undefined) held.delete(oldest);
        return { ...now.season, eaten: [...now.eaten.values()] };
      }),
  };
}

/** Adds the entries among records, which come by id, to their dates. */
function addEntries({ eaten, ids }: Held, records: readonly StoredRecord[]): void {
  const entries = records.map((record) => readRecord('entry', record)).filter((entry) => entry !== null);
  for (const [date, some] of Map.groupBy(entries, (entry: Entry) => entry.date)) {
    eaten.set(date, eatenDay(date, some, eaten.get(date)));
    ids.set(date, `${ids.get(date) ?? ' '}${some.map(({ id }) => `${id} `).join('')}`);
  }
}

/** The dates that changed entries are on, and those that they were on. */
function datesOf({ ids }: Held, records: readonly StoredRecord[]): Set<string> {
  const touched = new Set<string>();
  for (const record of records) {
    if (record.kind !== 'entry') continue;
    for (const [date, text] of ids) if (text.includes(` ${record.id} `)) touched.add(date);
    const date = readRecord('entry', record)?.date;
    if (date !== undefined) touched.add(date);
  }
  return touched;
}
