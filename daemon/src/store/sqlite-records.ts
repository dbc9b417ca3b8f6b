import type { DatabaseSync } from 'node:sqlite';
import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import { packClocks, unpackClocks } from './clocks-column.ts';
import { type Row, text } from './sqlite-rows.ts';
import type { RecordQuery } from './store.ts';

export type RecordTable = ReturnType<typeof recordTable>;

const COLUMNS = 'athlete, id, kind, fields, clocks';

/** The records of a SQLite store: each the fold of its changes. */
export function recordTable(db: DatabaseSync) {
  const selectOne = db.prepare(`SELECT ${COLUMNS} FROM records WHERE athlete = ? AND id = ?`);
  const upsert = db.prepare(
    `INSERT INTO records (${COLUMNS}, date) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (athlete, id) DO UPDATE SET
       kind = excluded.kind, fields = excluded.fields, clocks = excluded.clocks, date = excluded.date`,
  );

  return {
    get(athlete: string, id: string): StoredRecord | null {
      const row = selectOne.get(athlete, id);
      return row === undefined ? null : readRow(row);
    },

    put(record: StoredRecord): void {
      const { athlete, id, kind, fields, clocks } = record;
      const date = typeof fields.date === 'string' ? fields.date : null;
      upsert.run(athlete, id, kind, JSON.stringify(fields), packClocks(clocks), date);
    },

    find(query: RecordQuery): StoredRecord[] {
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
        .prepare(`SELECT ${COLUMNS} FROM records ${by} ${where} ORDER BY athlete, id LIMIT ?`)
        .all(...values, query.limit ?? -1)
        .map(readRow);
    },
  };
}

function readRow(row: Row): StoredRecord {
  const fields: StoredRecord['fields'] = JSON.parse(text(row, 'fields'));
  return {
    athlete: text(row, 'athlete'),
    id: text(row, 'id'),
    kind: text(row, 'kind'),
    fields,
    clocks: unpackClocks(text(row, 'clocks'), fields),
  };
}
