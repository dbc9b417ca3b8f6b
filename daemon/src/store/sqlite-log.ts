import type { DatabaseSync } from 'node:sqlite';
import type { Change } from '@platewright/core/changes/change.ts';
import { type Clock, laterClock } from '@platewright/core/changes/clock.ts';
import { applyChange } from '@platewright/core/changes/merge.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { chainHash } from './chain.ts';
import { whyImpossible } from './refuse.ts';
import type { RecordTable } from './sqlite-records.ts';
import { bytes, maybe, text, transaction, whole } from './sqlite-rows.ts';
import type { Stamp } from './store.ts';
import { StoreTrouble } from './trouble.ts';

interface Head {
  seq: number;
  hash: Uint8Array;
  clock: Clock | null;
}

export type ChangeLog = ReturnType<typeof changeLog>;

/** The change log of a SQLite store. */
export function changeLog(db: DatabaseSync, records: RecordTable) {
  const selectKnown = db.prepare('SELECT seq, body FROM changes WHERE id = ?');
  const insert = db.prepare('INSERT INTO changes (seq, id, body, hash) VALUES (?, ?, ?, ?)');
  const selectSince = db.prepare('SELECT seq, body FROM changes WHERE seq > ? ORDER BY seq LIMIT ?');
  const selectHash = db.prepare('SELECT hash FROM changes WHERE seq = ?');
  const selectHead = db.prepare('SELECT seq, hash, clock FROM head WHERE one = 1');
  const updateHead = db.prepare('UPDATE head SET seq = ?, hash = ?, clock = ? WHERE one = 1');

  function head(): Head {
    const row = selectHead.get();
    if (row === undefined) {
      throw new StoreTrouble(
        'damaged',
        'The store has lost the head of its change log. Go back to a backup.',
      );
    }
    return { seq: whole(row, 'seq'), hash: bytes(row, 'hash'), clock: maybe(row, 'clock', text) };
  }

  function known(id: string): Outcome | null {
    const row = selectKnown.get(id);
    if (row === undefined) return null;
    return { id, outcome: 'known', seq: whole(row, 'seq'), clock: parseChange(text(row, 'body')).clock };
  }

  function store(sent: Change, at: Head, stamp: Stamp): Outcome {
    const before = records.get(sent.athlete, sent.record);
    const reason = whyImpossible(sent, before);
    if (reason !== null) return { id: sent.id, outcome: 'rejected', reason };
    const change = { ...sent, clock: stamp(sent.clock, sent.device) };
    const body = JSON.stringify(change);
    at.seq += 1;
    at.hash = chainHash(at.hash, at.seq, body);
    at.clock = laterClock(at.clock, change.clock);
    insert.run(at.seq, change.id, body, at.hash);
    const after = applyChange(before ?? undefined, change);
    if (after !== before) records.put(after);
    return { id: change.id, outcome: 'stored', seq: at.seq, clock: change.clock };
  }

  return {
    head,

    append(changes: readonly Change[], stamp: Stamp): Outcome[] {
      return transaction(db, () => {
        const at = head();
        const first = at.seq;
        const outcomes = changes.map((change) => known(change.id) ?? store(change, at, stamp));
        if (at.seq > first) updateHead.run(at.seq, at.hash, at.clock);
        return outcomes;
      });
    },

    mark(seq: number): string | null {
      if (seq === 0) return '';
      const row = selectHash.get(seq);
      return row === undefined ? null : Buffer.from(bytes(row, 'hash')).toString('hex');
    },

    since(seq: number, limit: number): { changes: Change[]; seq: number; more: boolean } {
      const rows = selectSince.all(seq, limit + 1);
      const page = rows.slice(0, limit);
      const last = page.at(-1);
      return {
        changes: page.map((row) => parseChange(text(row, 'body'))),
        seq: last === undefined ? seq : whole(last, 'seq'),
        more: rows.length > limit,
      };
    },
  };
}

/** A change as it was written by this module; its checksum, not its shape, says whether it is sound. */
export function parseChange(body: string): Change {
  return JSON.parse(body);
}
