import type { DatabaseSync } from 'node:sqlite';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { type KeptRecord, RECORD_COLUMNS, readRecordRow, type recordValues } from './record-row.ts';
import type { RecordPlace, RecordQuery } from './store.ts';

export type RecordTable = ReturnType<typeof recordTable>;

/** The records of a SQLite store: each the fold of its changes. */
export function recordTable(db: DatabaseSync) {
  const selectOne = db.prepare(`SELECT ${RECORD_COLUMNS} FROM records WHERE athlete = ? AND id = ?`);
  const upsert = db.prepare(
    `INSERT INTO records (${RECORD_COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (athlete, id) DO UPDATE SET kind = excluded.kind, date = excluded.date,
       fields = excluded.fields, clocks = excluded.clocks, checksum = excluded.checksum`,
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

    get(athlete: string, id: string): KeptRecord | null {
      const row = selectOne.get(athlete, id);
      return row === undefined ? null : readRecordRow(row);
    },

    put(values: ReturnType<typeof recordValues>): void {
      upsert.run(...values);
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
