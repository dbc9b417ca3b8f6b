import type { Change } from '@platewright/core/changes/change.ts';
import { laterClock } from '@platewright/core/changes/clock.ts';
import { applyChange, type StoredRecord } from '@platewright/core/changes/merge.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { type ChangeRow, chainHash, changeText, type FoldedChange } from './change-row.ts';
import { addUp } from './checksum.ts';
import type { Head } from './head-row.ts';
import { type KeptRecord, madeValues, placeKey, type RecordValues, recordValues } from './record-row.ts';
import { whyImpossible } from './refuse.ts';
import type { Stamp } from './store.ts';

/** What a batch is appended to: the end of the log, what is known of its ids, and the records it names, by placeKey. */
interface Ground {
  head: Head;
  known: ReadonlyMap<string, FoldedChange>;
  records: ReadonlyMap<string, KeptRecord>;
}

/** What became of each change, and what an engine has to write: the head, rows of the log, records new and changed. */
interface Appended {
  outcomes: Outcome[];
  head: Head;
  changes: ChangeRow[];
  made: RecordValues[];
  changed: RecordValues[];
}

/** A record that the batch changed: as it is now, or, of most, the one change that made it with the text of its fields. */
type Touched = { record: StoredRecord } | { maker: Change; fields: string };

/** Appends changes to what was there and folds them into records, each of which is written once however often it changed. */
export function appendChanges(changes: readonly Change[], stamp: Stamp, ground: Ground): Appended {
  const head = { ...ground.head };
  const known = new Map(ground.known);
  const rows: ChangeRow[] = [];
  const touched = new Map<string, Touched>();

  function store(sent: Change): Outcome {
    const place = placeKey(sent.athlete, sent.record);
    const before = recordOf(touched.get(place)) ?? ground.records.get(place)?.record;
    const reason = whyImpossible(sent, before ?? null);
    if (reason !== null) return { id: sent.id, outcome: 'rejected', reason };
    const clock = stamp(sent.clock, sent.device);
    const change = clock === sent.clock ? sent : { ...sent, clock };
    const { body, fields } = changeText(change);
    head.seq += 1;
    head.hash = chainHash(head.hash, head.seq, body);
    head.clock = laterClock(head.clock, clock);
    rows.push({ seq: head.seq, change, body, hash: head.hash });
    known.set(change.id, { seq: head.seq, clock });
    if (before === undefined) touched.set(place, { maker: change, fields });
    else {
      const record = applyChange(before, change);
      if (record !== before) touched.set(place, { record });
    }
    return { id: change.id, outcome: 'stored', seq: head.seq, clock };
  }

  const outcomes = changes.map((change): Outcome => {
    const twin = known.get(change.id);
    return twin === undefined ? store(change) : { id: change.id, outcome: 'known', ...twin };
  });
  const [made, changed]: [RecordValues[], RecordValues[]] = [[], []];
  for (const [place, now] of touched) {
    const values = 'record' in now ? recordValues(now.record) : madeValues(now.maker, now.fields);
    const before = ground.records.get(place);
    if (before !== undefined) head.recordsSum = addUp(head.recordsSum, before.checksum);
    head.recordsSum = addUp(head.recordsSum, values[6]);
    (before === undefined ? made : changed).push(values);
  }
  return { outcomes, head, changes: rows, made, changed };
}

function recordOf(now: Touched | undefined): StoredRecord | undefined {
  if (now === undefined || 'record' in now) return now?.record;
  return applyChange(undefined, now.maker);
}
