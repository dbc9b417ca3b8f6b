import type { Change } from '@platewright/core/changes/change.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { starterLarder } from '../../daemon/src/server/starter.ts';
import { demoSeason } from '../../fixtures/season/generate.ts';

const SEASON_DAYS = 182;

/** A year of one invented athlete after another. */
export interface ThinYear {
  /** What the mean day has of them. */
  entriesADay: number;
  /** The year as changes of an athlete, with the starter larder. */
  of(athlete: string): Change[];
}

/** Two invented seasons, one after the other up to a date, with only the first food of each meal: ten thousand such years fit on a disk. */
export function thinYear(last: string): ThinYear {
  const halves = [demoSeason(addDays(last, -SEASON_DAYS), { seed: 8 }), demoSeason(last)];
  const changes = halves.flatMap((season, half) =>
    season
      .filter(({ kind, record }) => kind !== 'entry' || record.endsWith('-1'))
      .map((change) => ({ ...change, id: `${half}-${change.id}` })),
  );
  const entries = changes.filter(({ kind }) => kind === 'entry').length;
  return {
    entriesADay: entries / (halves.length * SEASON_DAYS),
    of: (athlete) =>
      [...changes, ...starterLarder(athlete)].map((change) => ({
        ...change,
        athlete,
        id: `${athlete}-${change.id}`,
        record: change.kind === 'athlete' ? athlete : change.record,
      })),
  };
}
