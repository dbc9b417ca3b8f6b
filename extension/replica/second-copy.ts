import type { Change } from '@platewright/core/changes/change.ts';
import { applyChange } from '@platewright/core/changes/merge.ts';
import type { Replica, ReplicaTx } from './port.ts';
import { RowSet } from './rebase.ts';
import { BLANK_HEAD, baseOf, type Head, targetOf, toRow } from './rows.ts';

/**
 * The changes of the outbox once more, in another place than the replica: a browser deletes an IndexedDB that it can't read,
 * and Chromium's can be unreadable after one kill in mid-write (LevelDB issue 1287).
 */
export interface SecondCopy {
  put(changes: readonly Change[]): Promise<void>;
  drop(ids: readonly string[]): Promise<void>;
  ids(): Promise<string[]>;
  read(): Promise<Change[]>;
}

/**
 * A replica whose outbox is kept twice. A transaction resolves only once both places have what it added, or `failed` was told
 * why the copy has not: what is in the replica is kept all the same, and who hears that it is not logs it again.
 */
export function keptTwice(replica: Replica, copy: SecondCopy, failed: (error: unknown) => void): Replica {
  return {
    look: (work) => replica.look(work),
    async transact(work) {
      const added: Change[] = [];
      const gone: string[] = [];
      const result = await replica.transact(async (tx) => await work(noting(tx, added, gone)));
      try {
        await copy.put(added);
        await copy.drop(gone);
      } catch (error) {
        failed(error);
      }
      return result;
    },
  };
}

/** The same transaction, which also notes what comes into the outbox and what goes. */
function noting(tx: ReplicaTx, added: Change[], gone: string[]): ReplicaTx {
  return {
    ...tx,
    async addToOutbox(changes) {
      added.push(...changes);
      await tx.addToOutbox(changes);
    },
    async dropFromOutbox(rows) {
      gone.push(...rows.map(({ change }) => change.id));
      await tx.dropFromOutbox(rows);
    },
  };
}

/**
 * Fills a replica that was thrown away from the second copy; all else comes again with the next sync. `head` is what is
 * known of where it stood. False when the replica is there, and nothing is done.
 */
export async function refill(replica: Replica, copy: SecondCopy, head: Partial<Head>): Promise<boolean> {
  if (!(await replica.look((tx) => tx.isNew()))) return false;
  const changes = (await copy.read()).toSorted(
    (a, b) => Number(a.clock > b.clock) - Number(a.clock < b.clock),
  );
  return await replica.transact(async (tx) => {
    if (!(await tx.isNew())) return false;
    const rows = RowSet.of([]);
    for (const change of changes) {
      const row = rows.get(targetOf(change));
      rows.put(toRow(applyChange(row, change), baseOf(row)));
    }
    await tx.putRecords(rows.touched());
    await tx.addToOutbox(changes);
    await tx.putHead({ ...BLANK_HEAD, ...head });
    return true;
  });
}

/**
 * Makes the copy hold what the outbox holds, where a kill between the two, or a disk that failed, left them apart.
 * `outbox` gives null for a replica that is not there.
 */
export async function mirror(
  copy: SecondCopy,
  outbox: () => Promise<readonly Change[] | null>,
): Promise<void> {
  // In this order: what is copied after the outbox was read is not taken for something that is gone.
  const copied = new Set(await copy.ids());
  const changes = await outbox();
  if (changes === null) return;
  const ids = new Set(changes.map(({ id }) => id));
  await copy.put(changes.filter(({ id }) => !copied.has(id)));
  await copy.drop([...copied].filter((id) => !ids.has(id)));
}
