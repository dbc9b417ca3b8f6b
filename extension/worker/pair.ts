import { pairResponseSchema, type Rights, sessionSchema } from '@platewright/core/protocol/devices.ts';
import { isOwner } from '@platewright/core/protocol/rights.ts';
import { deviceName } from '@platewright/core/ui/device-name.ts';
import type { PairEnd, Requests } from '../platform/messages.ts';
import { changePairing, forgetPairing, readPairing, savePairing } from '../platform/pairing.ts';
import { announceChange, reader } from '../platform/replica.ts';
import { secondCopy } from '../platform/second-copy.ts';
import { HEAD, readHead } from '../replica/head.ts';
import { ask, post, send } from '../replica/http.ts';
import { readNote } from '../replica/notes.ts';
import { BLANK_HEAD } from '../replica/rows.ts';
import { database, dropNotes, replica, writeNote } from './replica.ts';
import { lineToDaemon, requestSync } from './run-sync.ts';

/** Uses a code up for a token of this browser's own, then joins the store, or asks how to. */
export async function pair({ address, code }: Requests['pair']['ask']): Promise<PairEnd> {
  const open = { address, token: null, fetch: (url: string, init: RequestInit) => fetch(url, init) };
  const name = `Extension in ${deviceName(navigator.userAgent)}`;
  const request = post({ code, name, kind: 'extension' });
  const paired = await ask(open, 'pair', pairResponseSchema, request);
  if (!paired.ok) {
    const unheard = paired.why === 'offline' && address.startsWith('https:');
    return { state: 'failed', detail: unheard ? unheardOverTls(address) : paired.detail };
  }
  const { device, store, token, key } = paired.value;
  if (token === undefined) return { state: 'failed', detail: 'The daemon gave no token. Update it.' };
  const session = await ask({ ...open, token }, 'session', sessionSchema);
  if (!session.ok) return { state: 'failed', detail: session.detail };
  const { demo, athletes, rights } = session.value;
  // What an earlier pairing began ends here, or its records come in once they were looked for. Killed from here on, the
  // browser is unpaired.
  await adopt(null);
  const [before, athlete] = (await reader.read((reading) =>
    Promise.all([readNote(reading, 'session'), readNote(reading, 'athlete')]),
  )) ?? [null, null];
  const foreign = await isForeign(store, athletes);
  // An invented season gives way unasked.
  const joined = !foreign || before?.demo === true;
  if (joined && foreign) await empty();
  const logsFor = athlete === null ? {} : { athlete };
  await savePairing({ address, token, device, store, key, rights, joined, ...logsFor });
  if (joined) {
    // Not before: as long as other records are here, it says whether those are invented.
    await writeNote('session', { address, demo, athletes });
    await adopt(device, rights.access);
  } else {
    const mayBeSent = !demo && isOwner(rights);
    await writeNote('choice', { device, waiting: await database.outbox.count(), mayBeSent });
  }
  await requestSync();
  announceChange();
  return { state: joined ? 'paired' : 'choose' };
}

/** A browser does not say why it gave up: the daemon may be away, or its certificate unknown, as its own one is at first. */
function unheardOverTls(address: string): string {
  return `Nothing was heard from ${address}. If the daemon runs, this browser does not know its certificate yet: open ${address} in a tab, compare the certificate's SHA-256 fingerprint with the one in the daemon's terminal, go on only if they are the same, and pair again.`;
}

/** Ends the choice of what becomes of another store's records. */
export async function join(how: Requests['join']['ask']): Promise<null> {
  const choice = await reader.read((reading) => readNote(reading, 'choice'));
  if (choice === null || (how === 'send' && !choice.mayBeSent)) return null;
  await dropNotes('week', 'sync');
  if (how === 'replace') await empty();
  await adopt(choice.device);
  await changePairing({ joined: true });
  await dropNotes('choice');
  await requestSync();
  return null;
}

/** Lets the daemon forget this browser, where it answers. Records and what waits stay here. */
export async function unpair(): Promise<null> {
  const line = await lineToDaemon();
  const pairing = await readPairing();
  await adopt(null);
  await dropNotes('choice', 'sync');
  await forgetPairing();
  announceChange();
  // Last, because an answer can be long on its way, and meanwhile the browser may be paired anew.
  if (line !== null && pairing !== null) await send(line, `devices/${pairing.device}`, { method: 'DELETE' });
  return null;
}

/** Erases what this browser holds of any store. */
export async function erase(): Promise<null> {
  await empty();
  await dropNotes('session', 'week', 'athlete');
  announceChange();
  return null;
}

async function empty(): Promise<void> {
  // First what a lost replica would be filled from, or a kill here could bring back what was erased.
  await secondCopy.drop(await secondCopy.ids());
  const { records, outbox, meta } = database;
  await database.transaction('rw', records, outbox, meta, async () => {
    await records.clear();
    await outbox.clear();
    await meta.where('name').startsWith('larder ').delete();
    await meta.put({ name: HEAD, value: BLANK_HEAD });
  });
}

/** Stamps as this device from now on. Its rights come again with each sync; `access` is for the moment before the first. */
async function adopt(device: string | null, access?: Rights['access']): Promise<void> {
  await replica.transact(async (tx) => {
    const head = await tx.head();
    await tx.putHead({ ...head, device, rights: { ...head.rights, ...(access && { access }) } });
  });
}

/** Whether records are here that belong to another store, and not to an older or newer state of this one. */
async function isForeign(store: string, athletes: readonly { id: string }[]): Promise<boolean> {
  return (
    (await reader.read(async (reading) => {
      const head = await readHead(reading);
      if (head.store === null || head.store === store || (await reading.recordCount()) === 0) return false;
      const known = await Promise.all(athletes.map(({ id }) => reading.record([id, id])));
      return known.every((row) => row === undefined);
    })) ?? false
  );
}
