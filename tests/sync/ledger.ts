import type { Change } from '@platewright/core/changes/change.ts';
import { type Clock, clockTime, MAX_AHEAD_MS } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import type { SimulatedDevice } from './simulated-device.ts';

/** What really happened in a history, as nobody in it knows it whole. */
export class Ledger {
  /** Ids of the changes that persons made, as against those that a recovery sends again. */
  readonly edits = new Set<string>();
  /** What persons made and nobody gave up, with the device where it was made. */
  readonly made = new Map<string, { change: Change; device: SimulatedDevice }>();
  /** What the daemon stored, under its clock, as long as at least one whole copy of it is left anywhere. */
  readonly stored = new Map<string, Change>();
  readonly #everStored = new Set<string>();
  /** Each value with the place and the clock under which the daemon stored it. */
  readonly #writes = new Set<string>();

  /** Finds what a person has just made. */
  noteMade(device: SimulatedDevice): void {
    for (const { change } of device.replica.outbox()) {
      if (this.edits.has(change.id) && !this.made.has(change.id))
        this.made.set(change.id, { change, device });
    }
  }

  /** What the daemon made of changes at `nowMs`. */
  told(changes: readonly Change[], outcomes: readonly Outcome[], nowMs: number): void {
    const sent = new Map(changes.map((change) => [change.id, change]));
    for (const outcome of outcomes) {
      const change = sent.get(outcome.id);
      if (change === undefined || outcome.outcome === 'rejected') continue;
      const stored = { ...change, clock: outcome.clock };
      if (clockTime(stored.clock) > nowMs + MAX_AHEAD_MS) fail('a clock far ahead was stored', stored);
      const writes = Object.entries(stored.fields).map(([field, value]) =>
        writeOf(stored.athlete, stored.record, field, outcome.clock, value),
      );
      if (this.edits.has(change.id)) for (const write of writes) this.#writes.add(write);
      else if (!writes.every((write) => this.#writes.has(write)))
        fail('a recovery sends what nobody wrote', writes);
      this.stored.set(change.id, stored);
      this.#everStored.add(change.id);
    }
  }

  /** What a person made is where it was made, or with the daemon, or beaten by a later edit. */
  checkMade(): void {
    for (const { change, device } of this.made.values()) {
      const isThere =
        this.#everStored.has(change.id) ||
        // Beaten and given up, and then a recovery gave up what may not be written.
        !device.writes(change.athlete) ||
        device.replica.outbox().some((row) => row.change.id === change.id) ||
        this.#covers(device, change);
      if (!isThere) fail('an edit is gone', change);
    }
  }

  /** Nothing is in a record but what was written there, under the clock under which it was stored. */
  checkWritten(record: StoredRecord): void {
    for (const [field, value] of Object.entries(record.fields)) {
      const write = writeOf(record.athlete, record.id, field, record.clocks[field] ?? '', value);
      if (!this.#writes.has(write)) fail('nobody wrote', write);
    }
  }

  /** Nothing that the daemon acknowledged is missing: each of its fields holds that value or a later one. */
  checkStored(records: ReadonlyMap<string, StoredRecord>): void {
    for (const change of this.stored.values()) {
      const record = records.get(`${change.athlete},${change.record}`) ?? null;
      if (!isBeaten(change, record)) fail('an acknowledged change is missing', change);
    }
  }

  /** Forgets, after a store or a profile was set back, what is left nowhere: no program can bring that again. */
  forgetLost(records: ReadonlyMap<string, StoredRecord>, devices: readonly SimulatedDevice[]): void {
    for (const [id, change] of this.stored) {
      const key = `${change.athlete},${change.record}`;
      const isLeft =
        isBeaten(change, records.get(key) ?? null) || devices.some((device) => this.#holds(device, change));
      if (!isLeft) this.stored.delete(id);
    }
    for (const [id, { device }] of this.made) {
      const isLeft = device.replica.outbox().some(({ change }) => change.id === id);
      if (!isLeft && !this.#everStored.has(id)) this.made.delete(id);
    }
  }

  /** Whether a device can send a change again, as itself or as part of what it holds. */
  #holds(device: SimulatedDevice, change: Change): boolean {
    const waits = device.replica
      .outbox()
      .some((row) => row.state === 'waiting' && row.change.id === change.id);
    return device.writes(change.athlete) && (waits || this.#covers(device, change));
  }

  /** Whether what a device knows to be stored, or sends again as once stored, has each field of a change or a later one. */
  #covers(device: SimulatedDevice, { athlete, record, fields, clock }: Change): boolean {
    const known = device.held(athlete, record)?.clocks ?? {};
    const again = device.replica
      .outbox()
      .filter(({ state, change }) => state === 'waiting' && !this.edits.has(change.id))
      .map(({ change }) => change)
      .filter((change) => change.athlete === athlete && change.record === record && change.clock >= clock);
    return Object.keys(fields).every(
      (field) => (known[field] ?? '') >= clock || again.some((change) => field in change.fields),
    );
  }
}

function isBeaten(change: Change, record: StoredRecord | null): boolean {
  return Object.keys(change.fields).every((field) => (record?.clocks[field] ?? '') >= change.clock);
}

function writeOf(athlete: string, id: string, field: string, clock: Clock, value: unknown): string {
  return `${athlete}/${id}.${field} ${clock} ${JSON.stringify(value)}`;
}

export function byKey(records: readonly StoredRecord[]): Map<string, StoredRecord> {
  return new Map(records.map((record) => [`${record.athlete},${record.id}`, record]));
}

export function fail(what: string, detail: unknown): never {
  throw new Error(`${what}: ${JSON.stringify(detail)}`);
}
