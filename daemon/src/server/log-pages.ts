import type { Rights } from '@platewright/core/protocol/devices.ts';
import type { Outcome, Place, PullResponse, SnapshotResponse } from '@platewright/core/protocol/sync.ts';
import type { RecordPlace, Store } from '../store/store.ts';

type Reading = Pick<Store, 'changesSince' | 'lastSeq' | 'mark' | 'snapshot'>;
/** What an answer says beside who answers. */
type Said<T> = T extends unknown ? Omit<T, 'store' | 'protocol' | 'now' | 'rights'> : never;

/** What a device knows of the log; without `mark` only a place after the end is noticed as foreign. */
interface Known {
  since: number;
  mark: string | undefined;
  reached: Place | null;
}

/** The place of the last of the changes that were accepted; null when none was. */
export async function placeOf(store: Reading, outcomes: readonly Outcome[]): Promise<Place | null> {
  const seqs = outcomes.flatMap((outcome) => (outcome.outcome === 'rejected' ? [] : outcome.seq));
  return seqs.length === 0 ? null : await placeAt(store, Math.max(...seqs));
}

/** The changes that a device may see after its place in the log; a reset when the log is not the one that it knows. */
export async function pullPage(
  store: Reading,
  { athlete }: Rights,
  { since, mark, reached, limit }: Known & { limit: number },
): Promise<Said<PullResponse>> {
  const isOurs =
    (mark === undefined ? since <= (await store.lastSeq()) : (await store.mark(since)) === mark) &&
    (await holds(store, reached));
  const page = isOurs ? await store.changesSince(since, limit, athlete ?? undefined) : 'folded';
  if (page === 'folded') return { reset: 'snapshot' };
  return { ...page, ...(await placeAt(store, page.seq)) };
}

/** The records that a device may see after a place, and where the log stood; a reset as in a pull. */
export async function snapshotPage(
  store: Reading,
  { athlete }: Rights,
  { after, reached, limit }: { after: RecordPlace | null; reached: Place | null; limit: number },
): Promise<Said<SnapshotResponse>> {
  if (!(await holds(store, reached))) return { reset: 'snapshot' };
  const { records, seq } = await store.snapshot(after, limit, athlete ?? undefined);
  return { records, ...(await placeAt(store, seq)), more: records.length === limit };
}

async function holds(store: Reading, place: Place | null): Promise<boolean> {
  return place === null || (await store.mark(place.seq)) === place.mark;
}

/** Folded away meanwhile, a place has no mark, and whoever stands there is told so by the next pull. */
async function placeAt(store: Reading, seq: number): Promise<Place> {
  return { seq, mark: (await store.mark(seq)) ?? 'folded' };
}
