import type { Change } from '@platewright/core/changes/change.ts';
import { type Clock, laterClock } from '@platewright/core/changes/clock.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import type { PullResponse, SnapshotResponse } from '@platewright/core/protocol/sync.ts';
import type { Replica, ReplicaTx } from './port.ts';
import { acknowledge, RowSet, rebase } from './rebase.ts';
import { writesOf } from './recover.ts';
import { beyond, farther, type Head, keyOf, type OutboxRow, targetOf } from './rows.ts';

type ChangePage = Extract<PullResponse, { changes: unknown }>;
type RecordPage = Extract<SnapshotResponse, { records: unknown }>;

/**
 * Takes in the page of changes that followed `since`, and moves on to its end, in one transaction. A change of ours in
 * the page counts as acknowledged: its answer to the push was lost.
 */
export async function absorb(replica: Replica, since: number, page: ChangePage): Promise<void> {
  await replica.transact(async (tx) => {
    const head = await tx.head();
    // Meanwhile the browser was paired anew, and begins the log again.
    if (head.seq !== since) return;
    const pulled = new Set(page.changes.map((change) => change.id));
    const seen = await take(tx, page.changes, (row) => pulled.has(row.change.id));
    const recovered = head.recovery?.refilled === true && !page.more;
    await tx.putHead({
      ...head,
      seq: page.seq,
      mark: page.mark,
      reached: beyond(head.reached, page.seq),
      seen: laterClock(head.seen, seen),
      recovery: recovered ? null : head.recovery,
    });
  });
}

/** Takes in the page of a snapshot that followed `before`; after the last one the log leads on from where it was begun. */
export async function absorbSnapshot(
  replica: Replica,
  before: Head['snapshot'],
  page: RecordPage,
): Promise<void> {
  await replica.transact(async (tx) => {
    const head = await tx.head();
    if (head.seq !== 0 || head.snapshot?.after.join() !== before?.after.join()) return;
    const seen = await take(tx, page.records.flatMap(changesOf), () => false);
    const begun = before ?? page;
    const last = page.records.at(-1);
    const place = { seq: begun.seq, mark: begun.mark };
    await tx.putHead({
      ...head,
      ...(page.more && last !== undefined
        ? { snapshot: { after: keyOf(last), ...place } }
        : { snapshot: null, ...place }),
      reached: farther(head.reached, page),
      seen: laterClock(head.seen, seen),
    });
  });
}

/** A record as the changes that make it; they stay here, so they need no ids. */
function changesOf(record: StoredRecord): Change[] {
  return writesOf(record).map((write) => ({ ...write, id: '' }));
}

/**
 * Takes in what the daemon holds. Out of the outbox go the changes that `isKnown` names, and those of which the daemon
 * holds every field, or a later one. Returns the latest clock that came.
 */
async function take(
  tx: ReplicaTx,
  changes: readonly Change[],
  isKnown: (row: OutboxRow) => boolean,
): Promise<Clock | null> {
  const rows = await RowSet.load(tx, changes.map(targetOf));
  let seen: Clock | null = null;
  for (const change of changes) {
    acknowledge(rows, change);
    seen = laterClock(seen, change.clock);
  }
  const mine = await tx.outboxOf(rows.edited().map(keyOf));
  await rebase(
    tx,
    rows,
    mine.filter((row) => isKnown(row) || isHeld(rows, row)),
  );
  return seen;
}

/** What was rejected is the person's to decide, whatever the store holds. */
function isHeld(rows: RowSet, { state, change }: OutboxRow): boolean {
  const base = rows.get(targetOf(change))?.base ?? undefined;
  return state === 'waiting' && base !== undefined && applyChange(base, change) === base;
}
