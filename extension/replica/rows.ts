import type { Change } from '@platewright/core/changes/change.ts';
import type { Clock } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { OWNER } from '@platewright/core/protocol/rights.ts';
import type { Place } from '@platewright/core/protocol/sync.ts';

/** `[athlete, id]`: the identity of a record. */
export type RecordKey = [athlete: string, id: string];

/**
 * A record as this replica keeps it. One rule holds for every row: it is `base` with its changes in the outbox applied.
 * Acknowledging, re-stamping, rejecting and letting go are then all the same step.
 */
export interface RecordRow extends StoredRecord {
  /** Copy of the field `date`, empty for kinds without one: so that one index finds any kind by date. */
  date: string;
  /** What the daemon is known to hold: null for nothing yet. Absent while the outbox holds no change of this record. */
  base?: StoredRecord | null;
}

/** A change that the daemon has not acknowledged. `order` is the order of editing. */
export interface OutboxRow {
  order: number;
  change: Change;
  state: 'waiting' | 'rejected';
  /** Why the daemon can't accept it; empty while waiting. */
  reason: string;
}

/** Where this replica stands. */
export interface Head {
  /** Name under which this browser stamps; null until it is paired. */
  device: string | null;
  /** The store that `seq` counts in. */
  store: string | null;
  /** Last accepted change that was pulled, and the daemon's checksum of its log up to there. */
  seq: number;
  mark: string;
  /** Latest clock that the daemon is known to hold. */
  seen: Clock | null;
  /** Daemon's time minus ours, ms. */
  offsetMs: number;
  /** How far the replica is in sending a store anew what it may lack; null when it need not. See `recover.ts`. */
  recovery: { after: RecordKey | null; refilled: boolean } | null;
  /** Farthest place in the log that answers told of, until it is pulled: a store set back before it lacks what we know. */
  reached: Place | null;
  /** How far a snapshot is taken, and the place in the log at which it was begun; null when none is under way. */
  snapshot: (Place & { after: RecordKey }) | null;
  /** What the daemon lets this browser see and do, as it said last. */
  rights: Rights;
}

export const BLANK_HEAD: Head = {
  device: null,
  store: null,
  seq: 0,
  mark: '',
  seen: null,
  offsetMs: 0,
  recovery: null,
  reached: null,
  snapshot: null,
  rights: OWNER,
};

/** The one of two places that lies farther on in the log. */
export function farther(known: Place | null, { seq, mark }: Place): Place {
  return known !== null && known.seq >= seq ? known : { seq, mark };
}

/** A place that was reached, as long as it lies beyond what is pulled. */
export function beyond(reached: Place | null, seq: number): Place | null {
  return reached !== null && reached.seq > seq ? reached : null;
}

export function keyOf(record: Pick<StoredRecord, 'athlete' | 'id'>): RecordKey {
  return [record.athlete, record.id];
}

export function targetOf(change: Change): RecordKey {
  return [change.athlete, change.record];
}

/** The row of a record; `base` is left out when the outbox holds nothing of it. */
export function toRow(record: StoredRecord, base?: StoredRecord | null): RecordRow {
  const date = record.fields.date;
  const { athlete, id, kind, fields, clocks } = record;
  const row = { athlete, id, kind, fields, clocks, date: typeof date === 'string' ? date : '' };
  return base === undefined ? row : { ...row, base };
}

/** The record of a row, without what only the replica needs. */
export function toRecord({ athlete, id, kind, fields, clocks }: RecordRow): StoredRecord {
  return { athlete, id, kind, fields, clocks };
}

/** What the daemon is known to hold of a row. */
export function baseOf(row: RecordRow | undefined): StoredRecord | null {
  if (row === undefined) return null;
  return row.base === undefined ? toRecord(row) : row.base;
}
