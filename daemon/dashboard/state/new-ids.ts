import { newId } from '../api/edits.ts';

/** Ids of new records that were sent and not heard of, by what they hold. */
export type UnheardIds = Map<string, string>;

/** The id kept under a name, made when it is first asked for. */
export function idUnder(name: string, ids: UnheardIds): string {
  const id = ids.get(name) ?? newId();
  ids.set(name, id);
  return id;
}

/** What a new record holds, as a name; when it was sent is no part of it. */
function nameOf(fields: object): string {
  return JSON.stringify({ ...fields, at: undefined });
}

/** New records with an id each, also where two of them hold the same. */
export function withIds<F extends object>(
  records: readonly F[],
  ids: UnheardIds,
): { id: string; fields: F }[] {
  const counts = new Map<string, number>();
  return records.map((fields) => {
    const name = nameOf(fields);
    const count = counts.get(name) ?? 0;
    counts.set(name, count + 1);
    return { id: idUnder(`${count} ${name}`, ids), fields };
  });
}
