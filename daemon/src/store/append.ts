import type { Change } from '@platewright/core/changes/change.ts';
import { laterClock } from '@platewright/core/changes/clock.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { type ChangeRow, chainHash, type FoldedChange } from './change-row.ts';
import { addUp } from './checksum.ts';
import type { Head } from './head-row.ts';
import { type KeptRecord, recordValues } from './record-row.ts';
import { whyImpossible } from './refuse.ts';
import type { Stamp } from './store.ts';

/** What an engine does for an append, within one transaction. What was put is what is found next. */
export interface AppendPorts {
  known(id: string): FoldedChange | null;
  record(athlete: string, id: string): KeptRecord | null;
  insert(row: ChangeRow): void;
  put(values: ReturnType<typeof recordValues>, record: StoredRecord): void;
}

/** Appends changes after `head` and folds them into records; returns what became of each, and the head afterwards. */
export function appendChanges(
  changes: readonly Change[],
  { stamp, head, ports }: { stamp: Stamp; head: Head; ports: AppendPorts },
): { outcomes: Outcome[]; head: Head } {
  const at = { ...head };

  function store(sent: Change): Outcome {
    const before = ports.record(sent.athlete, sent.record);
    const reason = whyImpossible(sent, before?.record ?? null);
    if (reason !== null) return { id: sent.id, outcome: 'rejected', reason };
    const change = { ...sent, clock: stamp(sent.clock, sent.device) };
    const body = JSON.stringify(change);
    at.seq += 1;
    at.hash = chainHash(at.hash, at.seq, body);
    at.clock = laterClock(at.clock, change.clock);
    ports.insert({ seq: at.seq, change, body, hash: at.hash });
    const after = applyChange(before?.record, change);
    if (after !== before?.record) {
      const values = recordValues(after);
      at.recordsSum = addUp(at.recordsSum, ...(before === null ? [] : [before.checksum]), values[6]);
      ports.put(values, after);
    }
    return { id: change.id, outcome: 'stored', seq: at.seq, clock: change.clock };
  }

  const outcomes = changes.map((change): Outcome => {
    const known = ports.known(change.id);
    return known === null ? store(change) : { id: change.id, outcome: 'known', ...known };
  });
  return { outcomes, head: at };
}
