import type { Change, Json } from '@platewright/core/changes/change.ts';
import { whyRefused } from '@platewright/core/changes/check.ts';
import { laterClock, nextClock } from '@platewright/core/changes/clock.ts';
import { applyChange } from '@platewright/core/changes/merge.ts';
import { whyNoWrite } from '@platewright/core/protocol/rights.ts';
import type { Replica, ReplicaTx } from './port.ts';
import { RowSet } from './rebase.ts';
import { baseOf, targetOf, toRow } from './rows.ts';

/** What one edit sets. */
export interface Edit {
  athlete: string;
  kind: string;
  record: string;
  fields: Record<string, Json>;
}

/** Time and ids, which the replica doesn't make by itself. */
export interface Source {
  now(): number;
  newId(): string;
}

/**
 * Stamps the edits, applies them and puts them in the outbox, in one transaction. Resolves once they are on disk, with
 * the edits that undo them. Throws when nothing is paired or when the daemon would refuse an edit.
 */
export async function edit(replica: Replica, source: Source, edits: readonly Edit[]): Promise<Edit[]> {
  return await replica.transact((tx) => editWithin(tx, source, edits));
}

/** The same as `edit`, as part of a larger transaction. */
export async function editWithin(tx: ReplicaTx, source: Source, edits: readonly Edit[]): Promise<Edit[]> {
  const head = await tx.head();
  const { device } = head;
  if (device === null)
    throw new Error('This browser is not paired. Pair it in the options of the extension.');
  for (const one of edits) {
    const reason = whyNoWrite(head.rights, one.athlete) ?? whyRefused(one);
    if (reason !== null) throw new Error(reason);
  }
  let latest = laterClock(head.seen, await tx.latestInOutbox());
  const rows = await RowSet.load(
    tx,
    edits.map((one) => [one.athlete, one.record]),
  );
  const undo: Edit[] = [];
  const changes = edits.map((one): Change => {
    latest = nextClock(latest, Math.max(0, Math.round(source.now() + head.offsetMs)), device);
    return { id: source.newId(), device, clock: latest, ...one };
  });
  for (const change of changes) {
    const row = rows.get(targetOf(change));
    undo.unshift(undoOf(change, row?.fields));
    rows.put(toRow(applyChange(row, change), baseOf(row)));
  }
  await tx.putRecords(rows.touched());
  await tx.addToOutbox(changes);
  return undo;
}

/** A field can't be unwritten, only written again: a new record is undone by removing it, a new field by clearing it. */
function undoOf(change: Change, before: Record<string, Json> | undefined): Edit {
  const { athlete, kind, record } = change;
  if (before === undefined) return { athlete, kind, record, fields: { removed: true } };
  const fields = Object.keys(change.fields)
    .map((field): [string, Json] => [field, before[field] ?? null])
    // A record that was not whole before can't be made so again.
    .filter(([field, value]) => whyRefused({ kind, fields: { [field]: value } }) === null);
  return { athlete, kind, record, fields: Object.fromEntries(fields) };
}
