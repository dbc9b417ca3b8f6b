import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import { byKey, fail } from './ledger.ts';
import type { SimulatedDevice } from './simulated-device.ts';
import type { World } from './world.ts';

/** What must hold once nobody edits and every message arrives. Throws with what does not. */
export async function checkQuiet(world: World): Promise<void> {
  const records = byKey(await world.home.records());
  for (const device of world.devices) {
    checkOutbox(device);
    checkSame(device, records);
    checkRows(device);
  }
  const logged = await world.home.logged();
  if (new Set(logged).size !== logged.length) fail('the log holds a change twice', logged);
  for (const record of records.values()) world.ledger.checkWritten(record);
  world.ledger.checkMade();
  world.ledger.checkStored(records);
}

/** Nothing waits any more, and what was rejected is there with its reason. */
function checkOutbox({ replica }: SimulatedDevice): void {
  for (const row of replica.outbox()) {
    if (row.state !== 'rejected' || row.reason === '') fail('a change still waits', row);
  }
}

/** A device holds what the store holds of the athletes that it may see, and nothing else. */
function checkSame(device: SimulatedDevice, records: ReadonlyMap<string, StoredRecord>): void {
  let seen = 0;
  for (const row of device.replica.rows()) {
    const held = device.held(row.athlete, row.id);
    if (held === null) continue;
    seen += 1;
    const stored = records.get(`${row.athlete},${row.id}`);
    if (stored === undefined || !device.sees(row.athlete) || !isSame(held, stored)) {
      fail(`${device.name} holds another record than the store`, [held, stored]);
    }
  }
  const shown = [...records.values()].filter(({ athlete }) => device.sees(athlete));
  if (seen !== shown.length) fail(`${device.name} lacks records`, [seen, shown.length]);
}

/** Each row is its base with its changes in the outbox, so what was rejected shows where it was typed. */
function checkRows({ replica }: SimulatedDevice): void {
  for (const row of replica.rows()) {
    if (row.base === undefined) continue;
    const changes = replica
      .outbox()
      .map(({ change }) => change)
      .filter(({ athlete, record }) => athlete === row.athlete && record === row.id);
    if (changes.length === 0)
      fail('a record stands apart from the store, and the outbox does not say why', row);
    const made = changes.reduce<StoredRecord | undefined>(applyChange, row.base ?? undefined);
    if (made === undefined || !isSame(row, made)) fail('a record is not its base and its changes', row);
  }
}

function isSame(a: StoredRecord, b: StoredRecord): boolean {
  const fields = Object.keys(a.fields);
  return (
    a.kind === b.kind &&
    fields.length === Object.keys(b.fields).length &&
    fields.every((field) => a.fields[field] === b.fields[field] && a.clocks[field] === b.clocks[field])
  );
}
