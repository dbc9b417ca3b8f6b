import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { checkRows, isSame } from './check-rows.ts';
import { byKey, fail } from './ledger.ts';
import type { SimulatedDevice } from './simulated-device.ts';
import type { World } from './world.ts';

/** What must hold once nobody edits and every message arrives. Throws with what does not. */
export async function checkQuiet(world: World): Promise<void> {
  const records = byKey(await world.home.records());
  for (const device of world.devices) {
    checkOutbox(device);
    await checkCopy(device);
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

/** The second copy is one of the outbox. */
async function checkCopy(device: SimulatedDevice): Promise<void> {
  const copied = (await device.copy.read()).map(({ id }) => id).toSorted();
  const outbox = device.changes().map(({ id }) => id);
  if (copied.join() !== outbox.toSorted().join()) fail('the second copy is another', [copied, outbox]);
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
