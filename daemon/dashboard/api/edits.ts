import { type Edit, editsResponseSchema } from '@platewright/core/protocol/records.ts';
import type { FieldsOf, Kind } from '@platewright/core/records/kinds.ts';
import { uuidV7 } from '@platewright/core/records/uuid.ts';
import { post } from './request.ts';

/** A new id of this browser. `crypto.randomUUID` is missing on a page served over plain http in a network. */
export function newId(): string {
  return uuidV7(Date.now(), crypto.getRandomValues(new Uint8Array(10)));
}

/** Fields to set; null clears one that may be missing. */
export type Fields<K extends Kind> = { [F in keyof FieldsOf<K>]?: FieldsOf<K>[F] | null };

/** One edit of a record, with the fields of its kind. */
export function edit<K extends Kind>(kind: K, athlete: string, id: string, fields: Fields<K>): Edit {
  return { kind, athlete, id, fields: JSON.parse(JSON.stringify(fields)) };
}

/** Takes a record away; with `removed` false it comes back. */
export function removal(kind: Kind, athlete: string, id: string, removed: boolean): Edit {
  return { kind, athlete, id, fields: { removed } };
}

/** So many edits go in one request; the daemon takes 1000. */
const mostAtOnce = 500;

/** Stores edits: all or none, as long as they fit into one request. */
export async function sendEdits(edits: readonly Edit[]): Promise<void> {
  for (let start = 0; start < edits.length; start += mostAtOnce) {
    await post('records', { edits: edits.slice(start, start + mostAtOnce) }, editsResponseSchema);
  }
}
