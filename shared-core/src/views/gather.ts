import type { StoredRecord } from '../changes/merge.ts';
import { readRecord } from '../changes/read.ts';
import type { Kind, RecordOf } from '../records/kinds.ts';
import type { SeasonRecords } from './season-records.ts';

/**
 * The records of one athlete as views want them; removed and incomplete ones are left out. Null while the athlete is not
 * set up.
 */
export function gatherSeason(stored: readonly StoredRecord[], athleteId: string): SeasonRecords | null {
  const own = stored.filter((record) => record.athlete === athleteId);
  const all = <K extends Kind>(kind: K): RecordOf<K>[] =>
    own
      .filter((record) => record.kind === kind)
      .map((record) => readRecord(kind, record))
      .filter((record) => record !== null)
      // One order whatever order the records came in, so that no view depends on it.
      .sort((a, b) => (a.id < b.id ? -1 : 1));
  const athlete = all('athlete')[0];
  if (athlete === undefined) return null;
  return {
    athlete,
    phases: all('phase'),
    foods: all('food'),
    entries: all('entry'),
    days: all('day'),
    weighIns: all('weigh-in'),
    tape: all('tape'),
    calipers: all('calipers'),
    cycleStarts: all('cycle-start'),
    scaleShifts: all('scale-shift'),
    lifts: all('lift'),
    liftSets: all('lift-set'),
    calls: all('weekly-call'),
    standingMeals: all('standing-meal'),
  };
}
