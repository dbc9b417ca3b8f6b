import { checkFrom, checkText } from '@platewright/core/protocol/check.ts';
import type { Rights } from '@platewright/core/protocol/devices.ts';
import { type Pairing, readPairing } from '../platform/pairing.ts';
import { readHead } from '../replica/head.ts';
import { athleteOf, type Note, readNote } from '../replica/notes.ts';
import type { Reader, Reading } from '../replica/reader.ts';
import type { OutboxRow } from '../replica/rows.ts';

/** So many waiting changes are listed; of the others only the number is said. */
const MOST_LISTED = 50;

/** What the options page shows. */
export interface OptionsState {
  address: string | null;
  paired: boolean;
  /** To compare with what the daemon shows of this device; null on this machine, where nobody stands between. */
  check: string | null;
  access: Rights['access'];
  choice: Note<'choice'> | null;
  session: Note<'session'> | null;
  athlete: string | null;
  sync: Note<'sync'> | null;
  records: number;
  waiting: number;
  listed: readonly OutboxRow[];
  rejected: readonly OutboxRow[];
  /** Bytes this browser holds for the extension; null when it does not say. */
  bytes: number | null;
}

export async function readOptions(reader: Reader): Promise<OptionsState> {
  const [pairing, estimate, replica] = await Promise.all([
    readPairing(),
    navigator.storage.estimate().catch(() => null),
    reader.read(readReplica),
  ]);
  return {
    ...(replica ?? NOTHING),
    address: pairing?.address ?? null,
    paired: pairing !== null && replica?.device != null,
    check: pairing?.address.startsWith('https:') ? await checkOf(pairing) : null,
    bytes: estimate?.usage ?? null,
  };
}

async function checkOf({ key = '', device }: Pairing): Promise<string> {
  const text = new TextEncoder().encode(checkText(key, device));
  return checkFrom(new Uint8Array(await crypto.subtle.digest('SHA-256', text)));
}

async function readReplica(reading: Reading) {
  const [{ device, rights }, session, chosen, choice, sync, records, waiting, listed, rejected] =
    await Promise.all([
      readHead(reading),
      readNote(reading, 'session'),
      readNote(reading, 'athlete'),
      readNote(reading, 'choice'),
      readNote(reading, 'sync'),
      reading.recordCount(),
      reading.outboxCount('waiting'),
      reading.outbox('waiting', MOST_LISTED),
      reading.outbox('rejected'),
    ]);
  return {
    device,
    access: rights.access,
    session,
    athlete: athleteOf(session, chosen),
    choice,
    sync,
    records,
    waiting,
    listed,
    rejected,
  };
}

const NOTHING = {
  device: null,
  access: 'write',
  session: null,
  athlete: null,
  choice: null,
  sync: null,
  records: 0,
  waiting: 0,
  listed: [],
  rejected: [],
} as const;
