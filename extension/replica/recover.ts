import type { Change } from '@platewright/core/changes/change.ts';
import type { Replica } from './port.ts';
import { baseOf, keyOf, type RecordRow, toRow } from './rows.ts';

/** Rows taken in one transaction, so that a person's edit never waits long for its turn. */
const ROWS_AT_A_TIME = 500;
/** Length of milliseconds, counter and hyphens in front of the device in a clock. */
const CLOCK_BEFORE_DEVICE = 18;

/** Notes that the daemon's store is another one than `seq` counts in: nothing is known of what it holds. */
export async function startRecovery(replica: Replica, store: string): Promise<void> {
  await replica.transact(async (tx) => {
    await tx.putHead({ ...(await tx.head()), store, seq: 0, recovery: { after: null, refilled: false } });
  });
}

/**
 * Puts every record back in the outbox, under the clocks it has, as if the store held nothing. The pull from 0 that
 * follows takes out what the store does hold. Can be stopped anywhere and goes on where it stopped.
 */
export async function refillOutbox(replica: Replica, newId: () => string): Promise<void> {
  for (let more = true; more; ) {
    more = await replica.transact(async (tx) => {
      const head = await tx.head();
      if (head.recovery === null || head.recovery.refilled) return false;
      const rows = await tx.recordsAfter(head.recovery.after, ROWS_AT_A_TIME);
      await tx.addToOutbox(rows.flatMap((row) => changesOf(row, newId)));
      await tx.putRecords(rows.map((row) => toRow(row, null)));
      const last = rows.at(-1);
      const after = last === undefined ? head.recovery.after : keyOf(last);
      await tx.putHead({ ...head, recovery: { after, refilled: last === undefined } });
      return last !== undefined;
    });
  }
}

/** Changes that make what the last store was known to hold of a row: one for each clock in it. */
function changesOf(row: RecordRow, newId: () => string): Change[] {
  const record = baseOf(row);
  if (record === null) return [];
  const byClock = Map.groupBy(Object.entries(record.fields), ([field]) => record.clocks[field]);
  return [...byClock].flatMap(([clock, fields]) =>
    clock === undefined
      ? []
      : {
          id: newId(),
          athlete: record.athlete,
          // The device that made the edit, as its clock names it, not the one that sends it again.
          device: clock.slice(CLOCK_BEFORE_DEVICE),
          clock,
          kind: record.kind,
          record: record.id,
          fields: Object.fromEntries(fields),
        },
  );
}
