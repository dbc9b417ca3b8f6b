import type { Change } from '@platewright/core/changes/change.ts';
import { clockDevice } from '@platewright/core/changes/clock.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { mayWrite } from '@platewright/core/protocol/rights.ts';
import type { Replica } from './port.ts';
import { RowSet, rebase } from './rebase.ts';
import { baseOf, type Head, keyOf } from './rows.ts';

/** Rows taken in one transaction, so that a person's edit never waits long for its turn. */
const ROWS_AT_A_TIME = 500;

/** Notes that the daemon's log is not the one that `seq` counts in: nothing is known of what its store holds. */
export async function startRecovery(replica: Replica, met: Pick<Head, 'store' | 'rights'>): Promise<void> {
  await replica.transact(async (tx) => {
    const recovery = { after: null, refilled: false };
    await tx.putHead({
      ...(await tx.head()),
      ...met,
      seq: 0,
      mark: '',
      reached: null,
      snapshot: null,
      recovery,
    });
  });
}

/**
 * Puts every record back in the outbox, under the clocks it has, as if the store held nothing. What is read from the
 * start after that takes out what the store does hold. Records that this browser may not write are dropped instead: the
 * store's are the only ones. Can be stopped anywhere and goes on where it stopped.
 */
export async function refillOutbox(replica: Replica, newId: () => string): Promise<void> {
  for (let more = true; more; ) {
    more = await replica.transact(async (tx) => {
      const head = await tx.head();
      if (head.recovery === null || head.recovery.refilled) return false;
      const rows = await tx.recordsAfter(head.recovery.after, ROWS_AT_A_TIME);
      const writes = rows
        .filter((row) => mayWrite(head.rights, row.athlete))
        .flatMap((row) => writesOf(baseOf(row)));
      await tx.addToOutbox(writes.map((write): Change => ({ id: newId(), ...write })));
      await rebase(tx, RowSet.of(rows.map((row) => ({ ...row, base: null }))), []);
      const last = rows.at(-1);
      const after = last === undefined ? head.recovery.after : keyOf(last);
      await tx.putHead({ ...head, recovery: { after, refilled: last === undefined } });
      return last !== undefined;
    });
  }
}

/** What made a record as it stands: one write for each clock in it, by the device that its clock names. */
export function writesOf(record: StoredRecord | null): Omit<Change, 'id'>[] {
  if (record === null) return [];
  const byClock = Map.groupBy(Object.entries(record.fields), ([field]) => record.clocks[field]);
  return [...byClock].flatMap(([clock, fields]) =>
    clock === undefined
      ? []
      : {
          athlete: record.athlete,
          device: clockDevice(clock),
          clock,
          kind: record.kind,
          record: record.id,
          fields: Object.fromEntries(fields),
        },
  );
}
