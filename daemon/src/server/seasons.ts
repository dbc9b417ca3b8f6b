import { setImmediate as breathe } from 'node:timers/promises';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Nutrients } from '@platewright/core/records/nutrients.ts';
import { gatherSeason } from '@platewright/core/views/gather.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import type { Store } from '../store/store.ts';
import { mergeSeasons } from './merge-seasons.ts';
import { createTurns } from './turns.ts';

/** Seasons held at a time; one of ten years takes about 25 MB. */
const MOST_HELD = 4;
/** Records read before other requests get their turn. */
const PAGE = 2000;

interface Held {
  /** Number of the last change that is in it. */
  seq: number;
  season: SeasonRecords;
}

export type Seasons = ReturnType<typeof createSeasons>;

/**
 * Whole seasons in memory, because the weekly call looks at years of records: the log tells which records changed since,
 * and only those are read again.
 */
export function createSeasons(store: Store) {
  const held = new Map<string, Held>();
  const inTurn = createTurns();
  const share = sharedNutrients();

  /** Records with their athlete, without whom there is no season. */
  async function gather(records: readonly StoredRecord[], athlete: string): Promise<SeasonRecords | null> {
    const own = await store.record(athlete, athlete);
    const others = records.filter(({ id }) => id !== athlete);
    const season = gatherSeason(own === null ? others : [...others, own], athlete);
    if (season === null) return null;
    const entries = season.entries.map((entry) => ({ ...entry, per100: share(entry.per100) }));
    return { ...season, entries };
  }

  async function load(athlete: string): Promise<Held | null> {
    const seq = await store.lastSeq();
    let season = await gather([], athlete);
    for (let after = ''; season !== null; ) {
      const page = await store.records({ athlete, after, limit: PAGE });
      const last = page.at(-1);
      if (last === undefined) return { seq, season };
      const more = await gather(page, athlete);
      if (more === null) return null;
      season = mergeSeasons(season, more, new Set());
      after = last.id;
      await breathe();
    }
    return null;
  }

  /** The season with what was written since; null when its athlete was removed. */
  async function follow({ seq, season }: Held): Promise<Held | null> {
    const athlete = season.athlete.id;
    const page = await store.changesSince(seq, PAGE, athlete);
    if (page === 'folded') return await load(athlete);
    const changed = new Set(page.changes.map(({ record }) => record));
    if (changed.size === 0 && !page.more) return { seq: page.seq, season };
    const records = await Promise.all([...changed].map((id) => store.record(athlete, id)));
    const fresh = await gather(
      records.filter((record) => record !== null),
      athlete,
    );
    if (fresh === null) return null;
    const next = { seq: page.seq, season: mergeSeasons(season, fresh, changed) };
    return page.more ? await follow(next) : next;
  }

  return {
    /** The season of an athlete as it stands; null when there is no such athlete. */
    of: (athlete: string): Promise<SeasonRecords | null> =>
      inTurn(async () => {
        const before = held.get(athlete) ?? (await load(athlete));
        const now = before === null ? null : await follow(before);
        held.delete(athlete);
        if (now === null) return null;
        held.set(athlete, now);
        const [oldest] = held.keys();
        if (held.size > MOST_HELD && oldest !== undefined) held.delete(oldest);
        return now.season;
      }),
  };
}

/** Gives equal nutrients as one object: ten years of entries are of a few hundred foods. */
function sharedNutrients(): (nutrients: Nutrients) => Nutrients {
  const known = new Map<string, Nutrients>();
  return (nutrients) => {
    const text = JSON.stringify(nutrients);
    const same = known.get(text);
    if (same !== undefined) return same;
    known.set(text, nutrients);
    return nutrients;
  };
}
