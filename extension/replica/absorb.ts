import { type Clock, laterClock } from '@platewright/core/changes/clock.ts';
import type { PullResponse } from '@platewright/core/protocol/sync.ts';
import type { Replica } from './port.ts';
import { acknowledge, RowSet, rebase } from './rebase.ts';
import { keyOf, type OutboxRow, targetOf } from './rows.ts';

/**
 * Takes in a page of accepted changes and moves `seq` on, in one transaction. A change of ours in the page counts as
 * acknowledged (its answer to the push was lost), and so does one of which the store holds every field, or a later one.
 */
export async function absorb(replica: Replica, page: PullResponse): Promise<void> {
  await replica.transact(async (tx) => {
    const rows = await RowSet.load(tx, page.changes.map(targetOf));
    let seen: Clock | null = null;
    for (const change of page.changes) {
      acknowledge(rows, change);
      seen = laterClock(seen, change.clock);
    }
    const mine = await tx.outboxOf(rows.edited().map(keyOf));
    const pulled = new Set(page.changes.map((change) => change.id));
    const gone = mine.filter((row) => pulled.has(row.change.id) || isHeld(rows, row));
    await rebase(tx, rows, gone);
    const head = await tx.head();
    const recovered = head.recovery?.refilled === true && !page.more;
    await tx.putHead({
      ...head,
      seq: page.seq,
      seen: laterClock(head.seen, seen),
      recovery: recovered ? null : head.recovery,
    });
  });
}

/** What was rejected is the person's to decide, whatever the store holds. */
function isHeld(rows: RowSet, { state, change }: OutboxRow): boolean {
  const held = rows.get(targetOf(change))?.base?.clocks;
  return (
    state === 'waiting' &&
    held !== undefined &&
    Object.keys(change.fields).every((field) => (held[field] ?? '') >= change.clock)
  );
}
