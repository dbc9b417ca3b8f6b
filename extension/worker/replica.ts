import type { Change } from '@platewright/core/changes/change.ts';
import { forgetPairing, readPairing } from '../platform/pairing.ts';
import { announceChange } from '../platform/replica.ts';
import { secondCopy } from '../platform/second-copy.ts';
import { Database } from '../replica/database.ts';
import { dexieReplica } from '../replica/dexie-replica.ts';
import { HEAD } from '../replica/head.ts';
import type { Note, NoteName } from '../replica/notes.ts';
import { keptTwice, mirror, refill } from '../replica/second-copy.ts';

/** Whether outbox and second copy may differ: a worker was stopped between the two, perhaps, or the copy failed. */
let apart = true;

/** The one replica of this browser, to write. Only the worker writes; pages ask it to. */
export const database = new Database();
export const replica = keptTwice(dexieReplica(database, announceChange), secondCopy, () => {
  apart = true;
});

/** A store that no daemon has, so that what is here is not sent to the next one unasked. */
const LOST_STORE = 'lost';

let whole: Promise<void> | null = null;
// The browser closes a database that it can't read any more, to throw it away.
database.on('close', () => {
  whole = null;
});

/** Resolves once the replica is there: as it was left, or filled again after the browser threw it away. */
export function wholeReplica(): Promise<void> {
  whole ??= fillAgain().catch((error) => {
    whole = null;
    throw error;
  });
  return whole;
}

async function fillAgain(): Promise<void> {
  const pairing = await readPairing();
  if (pairing?.joined) {
    const { device, store, rights, athlete } = pairing;
    const filled = await refill(replica, secondCopy, { device, store, ...(rights && { rights }) });
    if (filled && athlete !== undefined) await writeNote('athlete', athlete);
  } else if ((await secondCopy.ids()).length > 0) {
    if (await refill(replica, secondCopy, { store: LOST_STORE })) await forgetPairing();
  }
}

/** Takes care that the second copy of the outbox is one. Throws when it can't be written. */
export async function mirrorOutbox(): Promise<void> {
  if (!apart) return;
  await wholeReplica();
  // Before, so that what fails meanwhile counts.
  apart = false;
  try {
    await mirror(secondCopy, outboxOrNull);
  } catch (error) {
    apart = true;
    throw error;
  }
}

/** All changes of the outbox; null when the replica is not there. */
async function outboxOrNull(): Promise<Change[] | null> {
  const { outbox, meta } = database;
  return await database.transaction('r', outbox, meta, async () => {
    const isThere = (await meta.get(HEAD)) !== undefined;
    return isThere ? (await outbox.toArray()).map(({ change }) => change) : null;
  });
}

/** Keeps a note for the pages. */
export async function writeNote<N extends NoteName>(name: N, value: Note<N>): Promise<void> {
  await database.meta.put({ name, value });
}

export async function dropNotes(...names: NoteName[]): Promise<void> {
  await database.meta.bulkDelete(names);
}
