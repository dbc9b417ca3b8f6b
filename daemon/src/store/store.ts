import type { Change } from '@platewright/core/changes/change.ts';
import type { Clock } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';

/** A device as the store keeps it; the token only as its SHA-256. */
export interface StoredDevice {
  id: string;
  name: string;
  kind: 'extension' | 'dashboard';
  tokenHash: string;
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
}

/** Where records are kept. Every promise that resolves means: on disk. */
export interface Store {
  /** Names this store; a restore gives a new name, so devices notice. */
  readonly id: string;
  /** Appends in one transaction. A change whose id is known is left alone; `stamp` clamps clocks far ahead. */
  append(changes: readonly Change[], stamp: (clock: Clock, device: string) => Clock): Promise<Outcome[]>;
  changesSince(
    seq: number,
    limit: number,
    athlete?: string,
  ): Promise<{ changes: Change[]; seq: number; more: boolean }>;
  records(query: RecordQuery): Promise<StoredRecord[]>;
  lastSeq(): Promise<number>;
  latestClock(): Promise<Clock | null>;
  devices(): Promise<StoredDevice[]>;
  deviceByToken(tokenHash: string): Promise<StoredDevice | null>;
  putDevice(device: StoredDevice): Promise<void>;
  setting(name: string): Promise<string | null>;
  putSetting(name: string, value: string): Promise<void>;
  /** A consistent copy into a new file at `path`. */
  backup(path: string): Promise<void>;
  /** Empty when sound, else one line for each fault. */
  verify(): Promise<string[]>;
  close(): Promise<void>;
}
