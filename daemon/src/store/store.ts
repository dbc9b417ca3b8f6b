import type { Change } from '@platewright/core/changes/change.ts';
import type { Clock } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import type { StoreTrouble } from './trouble.ts';

/** A device as the store keeps it; the token only as its SHA-256. Instants in ms since 1970. */
export interface StoredDevice {
  id: string;
  name: string;
  kind: 'extension' | 'dashboard';
  /** Origin that paired, which its writes must come from; null for a dashboard, whose origin is the daemon's own. */
  origin: string | null;
  tokenHash: string;
  rights: Rights;
  pairedAt: number;
  lastSeenAt: number | null;
  revokedAt: number | null;
}

export interface RecordQuery {
  athlete?: string;
  kind?: string;
  /** Bounds of the record's `date`, both inclusive. */
  from?: string;
  to?: string;
  /** Ids after this one, at most `limit` of them: a page. */
  after?: string;
  limit?: number;
}

/** What became of a try with a pairing code: the rights it gives when it was right; `none` when no code waits. */
export type CodeOutcome = Rights | 'wrong' | 'none';

/** The clock a change is stored under; it differs from its own when that is too far ahead. */
export type Stamp = (clock: Clock, device: string) => Clock;

/** A part of the change log, oldest first. `seq` is where the next part begins. */
export interface ChangePage {
  changes: Change[];
  seq: number;
  more: boolean;
}

/** A record's identity, and so its place in the order of records. */
export interface RecordPlace {
  athlete: string;
  id: string;
}

/** Where records are kept. Every promise that resolves means: on disk. */
export interface Store {
  /** Names this store; a restore gives a new name, so devices notice. */
  readonly id: string;
  /** Why it takes no changes: it is damaged; null as long as it does. Reading what is sound goes on. */
  trouble(): StoreTrouble | null;
  /** Appends in one transaction. A change whose id is known is left alone. */
  append(changes: readonly Change[], stamp: Stamp): Promise<Outcome[]>;
  /**
   * Changes after `seq`, of one athlete when it is named. `folded` when some of them are no longer in the log: begin
   * from a snapshot.
   */
  changesSince(seq: number, limit: number, athlete?: string): Promise<ChangePage | 'folded'>;
  /**
   * Records after a place, by athlete, then id; removed ones too. All changes up to `seq` are in them: who has read all
   * pages goes on with the changes after the `seq` of the first.
   */
  snapshot(
    after: RecordPlace | null,
    limit: number,
    athlete?: string,
  ): Promise<{ records: StoredRecord[]; seq: number }>;
  /** Takes the changes before `seq` out of the log. Their ids stay known. Returns how many it took out. */
  fold(seq: number): Promise<number>;
  /** By athlete, then id; removed ones too. */
  records(query: RecordQuery): Promise<StoredRecord[]>;
  record(athlete: string, id: string): Promise<StoredRecord | null>;
  lastSeq(): Promise<number>;
  /**
   * Checksum of the log up to and with a number, in hex: equal in two stores only when all up to there is. Empty for 0;
   * null for a number that the log never held or no longer holds.
   */
  mark(seq: number): Promise<string | null>;
  /** The latest clock of all stored changes. */
  latestClock(): Promise<Clock | null>;
  devices(): Promise<StoredDevice[]>;
  deviceByToken(tokenHash: string): Promise<StoredDevice | null>;
  /** One whose key was taken back stays as it is: what else is written of it may have been read before. */
  putDevice(device: StoredDevice): Promise<void>;
  /** A pairing code, kept only as a salted hash, and the rights of the device it will make. */
  putCode(hash: string, expiresAt: number, rights: Rights): Promise<void>;
  /** Hashes of the codes that can still be used. */
  waitingCodes(now: number): Promise<string[]>;
  /** Uses a code up. A wrong one, null, counts as a try on every code that waits, and five tries burn a code. */
  takeCode(hash: string | null, now: number): Promise<CodeOutcome>;
  setting(name: string): Promise<string | null>;
  putSetting(name: string, value: string): Promise<void>;
  /** A consistent copy into a new file at `path`. */
  backup(path: string): Promise<void>;
  /** Empty when sound, else one line for each fault. */
  verify(): Promise<string[]>;
  close(): Promise<void>;
}
