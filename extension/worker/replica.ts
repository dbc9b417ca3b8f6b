import { announceChange } from '../platform/replica.ts';
import { Database } from '../replica/database.ts';
import { dexieReplica } from '../replica/dexie-replica.ts';
import type { Note, NoteName } from '../replica/notes.ts';

/** The one replica of this browser, to write. Only the worker writes; pages ask it to. */
export const database = new Database();
export const replica = dexieReplica(database, announceChange);

/** Keeps a note for the pages. */
export async function writeNote<N extends NoteName>(name: N, value: Note<N>): Promise<void> {
  await database.meta.put({ name, value });
}

export async function dropNotes(...names: NoteName[]): Promise<void> {
  await database.meta.bulkDelete(names);
}
