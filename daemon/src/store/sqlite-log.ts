import type { DatabaseSync } from 'node:sqlite';
import type { Change } from '@platewright/core/changes/change.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { appendChanges } from './append.ts';
import { type FoldedChange, foldedValues, readChange, readFolded } from './change-row.ts';
import { HEAD_COLUMNS, type Head, headValues, readHead } from './head-row.ts';
import { FOLDED, HEAD } from './row-check.ts';
import { hex, text } from './rows.ts';
import { rowInsert } from './sqlite-insert.ts';
import { rowsPicked } from './sqlite-pick.ts';
import type { RecordTable } from './sqlite-records.ts';
import { transaction } from './sqlite-transaction.ts';
import type { ChangePage, Stamp } from './store.ts';

/** Rows of the log, each with the hash of the row before it. */
export const CHANGES =
  'SELECT c.seq, c.id, c.body, c.hash, p.hash AS before FROM changes c LEFT JOIN changes p ON p.seq = c.seq - 1';

/** Changes that go through all steps before the next ones begin them: so few that the processor's cache holds them. */
const CHANGES_AT_A_TIME = 100;

/** The change log of a SQLite store. */
export function changeLog(db: DatabaseSync, records: RecordTable) {
  const pickChanges = rowsPicked(db, { select: CHANGES, table: 'changes c', id: 'c.id' });
  const pickFolded = rowsPicked(db, { select: FOLDED, table: 'folded', id: 'id' });
  const insert = rowInsert(db, 'changes (seq, id, body, hash)', '?, ?, ?, unhex(?)');
  const selectSince = db.prepare(`${CHANGES} WHERE c.seq > ? ORDER BY c.seq LIMIT ?`);
  const selectOf = db.prepare(
    `${CHANGES} WHERE c.seq > ? AND c.body ->> '$.athlete' = ? ORDER BY c.seq LIMIT ?`,
  );
  const selectLast = db.prepare('SELECT max(seq) AS last FROM changes');
  const selectHash = db.prepare('SELECT hash FROM changes WHERE seq = ?');
  const selectHead = db.prepare(HEAD);
  const updateHead = db.prepare(`UPDATE head SET (${HEAD_COLUMNS}) = (?, ?, ?, ?, ?, ?, ?) WHERE one = 1`);
  const insertFolded = db.prepare('INSERT INTO folded (id, seq, clock, checksum) VALUES (?, ?, ?, ?)');
  const deleteFolded = db.prepare('DELETE FROM changes WHERE seq < ?');

  const head = (): Head => readHead(selectHead.get());

  /** Those of these changes that were appended before. */
  function knownOf(changes: readonly Change[], { foldedHash, foldedSeq }: Head): Map<string, FoldedChange> {
    const known = new Map<string, FoldedChange>();
    const ids = changes.map(({ id }) => id);
    for (const row of pickChanges(ids)) {
      const { seq, change } = readChange(row, foldedHash);
      known.set(change.id, { seq, clock: change.clock });
    }
    if (foldedSeq === 0) return known;
    for (const row of pickFolded(ids)) known.set(text(row, 'id'), readFolded(row));
    return known;
  }

  return {
    head,

    /** Number of the last change; without the head when it can be, so that a store with a damaged one can be served. */
    lastSeq(): number {
      const last = selectLast.get()?.last;
      return typeof last === 'number' ? last : head().foldedSeq;
    },

    append(changes: readonly Change[], stamp: Stamp): Outcome[] {
      return transaction(db, () => {
        const first = head();
        let at = first;
        const outcomes: Outcome[] = [];
        for (let i = 0; i < changes.length; i += CHANGES_AT_A_TIME) {
          const some = changes.slice(i, i + CHANGES_AT_A_TIME);
          const ground = { head: at, known: knownOf(some, at), records: records.of(some) };
          const done = appendChanges(some, stamp, ground);
          insert(done.changes.map(({ seq, change, body, hash }) => [seq, change.id, body, hash]));
          records.insert(done.made);
          records.update(done.changed);
          outcomes.push(...done.outcomes);
          at = done.head;
        }
        if (at.seq > first.seq) updateHead.run(...headValues(at));
        return outcomes;
      });
    },

    mark(seq: number): string | null {
      if (seq === 0) return '';
      const { foldedSeq, foldedHash } = head();
      if (seq === foldedSeq) return foldedHash;
      const row = selectHash.get(seq);
      return row === undefined ? null : hex(row, 'hash');
    },

    since(seq: number, limit: number, athlete: string | undefined): ChangePage | 'folded' {
      const { foldedSeq, foldedHash, seq: end } = head();
      if (seq < foldedSeq) return 'folded';
      const rows =
        athlete === undefined ? selectSince.all(seq, limit + 1) : selectOf.all(seq, athlete, limit + 1);
      const page = rows.slice(0, limit).map((row) => readChange(row, foldedHash));
      const more = rows.length > limit;
      const last = more ? page.at(-1)?.seq : end;
      return { changes: page.map(({ change }) => change), seq: Math.max(seq, last ?? seq), more };
    },

    fold(before: number): number {
      return transaction(db, () => {
        const at = head();
        const last = Math.min(before - 1, at.seq);
        if (last <= at.foldedSeq) return 0;
        let foldedHash = at.foldedHash;
        for (const row of selectSince.iterate(at.foldedSeq, last - at.foldedSeq)) {
          const { seq, change, hash } = readChange(row, at.foldedHash);
          insertFolded.run(...foldedValues(change.id, { seq, clock: change.clock }));
          foldedHash = hash;
        }
        deleteFolded.run(last + 1);
        updateHead.run(...headValues({ ...at, foldedSeq: last, foldedHash }));
        return last - at.foldedSeq;
      });
    },
  };
}
