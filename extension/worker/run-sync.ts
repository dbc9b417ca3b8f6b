import { readPairing } from '../platform/pairing.ts';
import { announceChange, reader } from '../platform/replica.ts';
import { source } from '../platform/source.ts';
import { httpDaemon, type Line } from '../replica/http.ts';
import { readNote } from '../replica/notes.ts';
import { PairedAnew, underOnePairing } from '../replica/one-pairing.ts';
import { readAhead } from '../replica/read-ahead.ts';
import { sync } from '../replica/sync.ts';
import { refreshNotes } from './refresh-notes.ts';
import { mirrorOutbox, replica, wholeReplica, writeNote } from './replica.ts';

let next: Promise<void> | null = null;

/** Syncs as soon as no other sync runs. Asked again meanwhile it syncs once more after, not once for each. */
export function requestSync(): Promise<void> {
  next ??= navigator.locks.request('sync', async () => {
    next = null;
    await syncNow().catch((error) => fail('This browser could not store what is to be kept', error));
    // After it, because what is sent need not be copied.
    await mirrorOutbox().catch((error) =>
      fail('This browser could not keep a second copy of what waits to be sent', error),
    );
  });
  return next;
}

/** How to reach the paired daemon; null when there is none. */
export async function lineToDaemon(): Promise<Line | null> {
  const pairing = await readPairing();
  if (pairing === null) return null;
  return { address: pairing.address, token: pairing.token, fetch: (url, init) => fetch(url, init) };
}

async function syncNow(): Promise<void> {
  await wholeReplica();
  // Before the pairing is read, so that they are of one.
  const { device } = await replica.look((tx) => tx.head());
  const line = await lineToDaemon();
  const choice = await reader.read((reading) => readNote(reading, 'choice'));
  // A kill in the middle of pairing leaves a pairing that no page shows; nothing is done under that.
  if (device === null || line === null || choice !== null) return;
  const own = underOnePairing(replica, device);
  const end = await sync({ ...source, replica: own, daemon: readAhead(httpDaemon(line), source.now) });
  // By the replica, which tells the pages, too.
  const note: typeof writeNote = (name, value) => own.transact(async () => await writeNote(name, value));
  await note('sync', { ...end, at: source.now() });
  if (end.state === 'done') await refreshNotes(line, source.now(), note);
}

/** A fault of the browser, such as a full disk: said to the person like any other trouble. */
async function fail(what: string, error: unknown): Promise<void> {
  // The next pairing has its own sync.
  if (error instanceof PairedAnew) return;
  const said = error instanceof Error ? error.message : String(error);
  const detail = `${what} (${said}). Make room on its disk, or start it anew.`;
  await writeNote('sync', { state: 'refused', detail, at: source.now() });
  announceChange();
}
