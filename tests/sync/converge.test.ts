import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { describe, expect, it } from 'vitest';
import { toRecord } from '../../extension/replica/rows.ts';
import { World } from './world.ts';

const HISTORIES = 600;
const STEPS = 60;

function sorted(records: readonly StoredRecord[]): StoredRecord[] {
  return [...records].sort((a, b) => (a.id < b.id ? -1 : 1));
}

async function lived(seed: number): Promise<World> {
  const world = new World(seed);
  await world.live(STEPS);
  const ends = await world.quiet();
  expect(ends.map((end) => end.state)).toEqual(['done', 'done', 'done']);
  return world;
}

/** What must hold once nobody edits and every message arrives. */
function check(world: World): void {
  const stored = sorted([...world.store.records.values()]);
  for (const { replica } of world.devices) {
    // Nothing waits any more, and what was rejected is still there with its reason.
    const left = replica.outbox();
    expect(left.every((row) => row.state === 'rejected' && row.reason !== '')).toBe(true);
    // All replicas hold what the store holds, but for what was rejected.
    const held = replica
      .rows()
      .flatMap((row) => (row.base === undefined ? [toRecord(row)] : (row.base ?? [])));
    expect(sorted(held)).toEqual(stored);
    // A record stands apart from what the store holds only while the outbox says why.
    for (const row of replica.rows().filter(({ base }) => base !== undefined)) {
      expect(left.some(({ change }) => change.record === row.id)).toBe(true);
    }
    // What was rejected shows where it was typed.
    for (const { change } of left) {
      const row = replica.rows().find(({ id }) => id === change.record);
      for (const [field, value] of Object.entries(change.fields)) {
        const later = left.some((other) => other.change.clock > change.clock && field in other.change.fields);
        const beaten = (row?.clocks[field] ?? '') > change.clock;
        if (!later && !beaten) expect(row?.fields[field]).toEqual(value);
      }
    }
  }
  // Every change is with the store, in its own right or beaten by a later one, or still on its device.
  for (const { change, device } of world.made.values()) {
    const { replica } = world.devices.find(({ name }) => name === device) ?? {};
    const kept = replica?.outbox().some((row) => row.change.id === change.id);
    const clocks = world.store.records.get(`${change.athlete},${change.record}`)?.clocks;
    const beaten = Object.keys(change.fields).every((field) => (clocks?.[field] ?? '') >= change.clock);
    expect(kept || beaten || world.storedUnder.has(change.id), change.id).toBe(true);
  }
  // Nothing is in the log twice.
  expect(new Set(world.store.log.map((change) => change.id)).size).toBe(world.store.log.length);
  // Nothing that the daemon ever acknowledged is missing, not even after it was set back to a backup: each field holds
  // that value or a later one.
  for (const change of world.storedUnder.values()) {
    const record = world.store.records.get(`${change.athlete},${change.record}`);
    for (const field of Object.keys(change.fields)) {
      expect((record?.clocks[field] ?? '') >= change.clock, `${change.record}.${field}`).toBe(true);
    }
  }
  // Nothing was invented.
  for (const record of stored) {
    for (const [field, value] of Object.entries(record.fields)) {
      expect(world.written.has(`${record.id}.${field}=${JSON.stringify(value)}`)).toBe(true);
    }
  }
}

describe('simulated devices and daemon', () => {
  it(`end with the same records in ${HISTORIES} histories of faults`, async () => {
    for (let seed = 1; seed <= HISTORIES; seed += 1) {
      try {
        check(await lived(seed));
      } catch (error) {
        throw new Error(`seed ${seed}: ${error instanceof Error ? error.message : error}`, { cause: error });
      }
    }
  });

  it('replay step for step from a seed', async () => {
    const [one, other] = [await lived(7), await lived(7)];
    expect(one.trace).toEqual(other.trace);
    expect(one.store.log).toEqual(other.store.log);
  });
});
