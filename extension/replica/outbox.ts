import type { Json } from '@platewright/core/changes/change.ts';
import { type Clock, laterClock } from '@platewright/core/changes/clock.ts';
import type { Outcome, Place } from '@platewright/core/protocol/sync.ts';
import { editWithin, type Source } from './edit.ts';
import type { Replica, ReplicaTx } from './port.ts';
import { acknowledge, RowSet, rebase } from './rebase.ts';
import { farther, type OutboxRow, targetOf } from './rows.ts';

/**
 * Takes in what became of pushed changes. A stored one leaves the outbox, under the clock that the daemon gave it; a
 * rejected one stays, with the reason. Returns how many got an answer.
 */
export async function settle(
  replica: Replica,
  sent: readonly OutboxRow[],
  { outcomes, reached }: { outcomes: readonly Outcome[]; reached: Place | null },
): Promise<number> {
  const answers = new Map(outcomes.map((outcome) => [outcome.id, outcome]));
  return await replica.transact(async (tx) => {
    // Read again: while the answer travelled, a pull may have acknowledged some, or the person let them go.
    const present = await tx.outbox(sent.map((row) => row.order));
    const rows = await RowSet.load(
      tx,
      present.map((row) => targetOf(row.change)),
    );
    let seen: Clock | null = null;
    const gone: OutboxRow[] = [];
    const rejected: OutboxRow[] = [];
    for (const row of present) {
      const answer = answers.get(row.change.id);
      if (answer === undefined) continue;
      if (answer.outcome === 'rejected') {
        rejected.push({ ...row, state: 'rejected', reason: answer.reason });
      } else {
        acknowledge(rows, { ...row.change, clock: answer.clock });
        seen = laterClock(seen, answer.clock);
        gone.push(row);
      }
    }
    await tx.putOutbox(rejected);
    await rebase(tx, rows, gone);
    const head = await tx.head();
    await tx.putHead({
      ...head,
      reached: reached === null ? head.reached : farther(head.reached, reached),
      seen: laterClock(head.seen, seen),
    });
    return sent.length - present.length + gone.length + rejected.length;
  });
}

/** Puts a rejected change back in line, as it is. */
export async function resend(replica: Replica, order: number): Promise<void> {
  await replica.transact(async (tx) => {
    const rows = await tx.outbox([order]);
    await tx.putOutbox(rows.map((row) => ({ ...row, state: 'waiting', reason: '' })));
  });
}

/** Gives up a change that the daemon has not taken: the record is again what it is without it. */
export async function letGo(replica: Replica, order: number): Promise<void> {
  await replica.transact(async (tx) => {
    await takeOut(tx, order);
  });
}

/**
 * Replaces a rejected change by a new one with other fields, stamped now. Throws with the reason when the new fields
 * would be refused too.
 */
export async function amend(
  replica: Replica,
  source: Source,
  order: number,
  fields: Record<string, Json>,
): Promise<void> {
  await replica.transact(async (tx) => {
    const gone = await takeOut(tx, order);
    const edits = gone.map(({ change: { athlete, kind, record } }) => ({ athlete, kind, record, fields }));
    await editWithin(tx, source, edits);
  });
}

/** Takes a change out of the outbox, and out of its record; none when it is gone already. */
async function takeOut(tx: ReplicaTx, order: number): Promise<OutboxRow[]> {
  const gone = await tx.outbox([order]);
  const rows = await RowSet.load(
    tx,
    gone.map(({ change }) => targetOf(change)),
  );
  await rebase(tx, rows, gone);
  return gone;
}
