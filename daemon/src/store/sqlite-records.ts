import type { DatabaseSync } from 'node:sqlite';
import type { Change } from '@platewright/core/changes/change.ts';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { type KeptRecord, placeKey, RECORD_COLUMNS, type RecordValues, readRecordRow } from './record-row.ts';
import { rowInsert } from './sqlite-insert.ts';
import { rowsPicked } from './sqlite-pick.ts';
import type { RecordPlace, RecordQuery } from './store.ts';

export type RecordTable = ReturnType<typeof recordTable>;

/** The records of a SQLite store: each the fold of its changes. */
export function recordTable(db: DatabaseSync) {
  const selectOne = db.prepare(`SELECT ${RECORD_COLUMNS} FROM records WHERE athlete = ? AND id = ?`);
  const pick = rowsPicked(db, {
    select: `SELECT ${RECORD_COLUMNS} FROM records`,
    table: 'records',
    also: 'athlete = ? AND',
    id: 'id',
  });
  const insert = rowInsert(db, `records (${RECORD_COLUMNS})`, '?, ?, ?, ?, ?, ?, ?');
  const update = db.prepare(
    `UPDATE records SET kind = ?3, date = ?4, fields = ?5, clocks = ?6, checksum = ?7
     WHERE athlete = ?1 AND id = ?2`,
  );
  const selectPage = db.prepare(
    `SELECT ${RECORD_COLUMNS} FROM records WHERE (athlete, id) > (?, ?) ORDER BY athlete, id LIMIT ?`,
  );

  function find(query: RecordQuery): StoredRecord[] {
    const tests: string[] = [];
    const values: (string | number)[] = [];
    const add = (test: string, value: string | undefined) => {
      if (value === undefined) return;
      tests.push(test);
      values.push(value);
    };
    add('athlete = ?', query.athlete);
    add('kind = ?', query.kind);
    add('date >= ?', query.from);
    add('date <= ?', query.to);
    add('id > ?', query.after);
    const where = tests.length === 0 ? '' : `WHERE ${tests.join(' AND ')}`;
    // Left to itself, SQLite walks all records of the athlete to have them in order.
    const by = query.kind === undefined ? '' : 'INDEXED BY records_by_kind';
    return db
      .prepare(`SELECT ${RECORD_COLUMNS} FROM records ${by} ${where} ORDER BY athlete, id LIMIT ?`)
      .all(...values, query.limit ?? -1)
      .map((row) => readRecordRow(row).record);
  }

  return {
    find,

    get(athlete: string, id: string): StoredRecord | null {
      const row = selectOne.get(athlete, id);
      return row === undefined ? null : readRecordRow(row).record;
    },

    /** The records that changes name and that are there, by placeKey. */
    of(changes: readonly Change[]): Map<string, KeptRecord> {
      const found = new Map<string, KeptRecord>();
      for (const [athlete, its] of Map.groupBy(changes, (change) => change.athlete)) {
        const ids = its.map(({ record }) => record);
        for (const row of pick(ids, athlete)) {
          const kept = readRecordRow(row);
          found.set(placeKey(athlete, kept.record.id), kept);
        }
      }
      return found;
    },

    insert,

    update(changed: readonly RecordValues[]): void {
      for (const values of changed) update.run(...values);
    },

    page(after: RecordPlace | null, limit: number, athlete: string | undefined): StoredRecord[] {
      if (athlete !== undefined) {
        const later = after !== null && after.athlete > athlete;
        const from = after?.athlete === athlete ? after.id : '';
        return later ? [] : find({ athlete, after: from, limit });
      }
      return selectPage
        .all(after?.athlete ?? '', after?.id ?? '', limit)
        .map((row) => readRecordRow(row).record);
    },
  };
}
