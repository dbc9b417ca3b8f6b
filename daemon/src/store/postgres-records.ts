import type { StoredRecord } from '@platewright/core/changes/merge.ts';
import type { PoolClient } from 'pg';
import { type KeptRecord, placeKey, RECORD_COLUMNS, type RecordValues, readRecordRow } from './record-row.ts';
import type { RecordPlace, RecordQuery } from './store.ts';

/** Records that fit a query, by athlete, then id. */
export async function findRecords(client: PoolClient, query: RecordQuery): Promise<StoredRecord[]> {
  const tests: string[] = [];
  const values: (string | number | null)[] = [query.limit ?? null];
  const add = (test: string, value: string | undefined) => {
    if (value !== undefined) tests.push(`${test} $${values.push(value)}`);
  };
  add('athlete =', query.athlete);
  add('kind =', query.kind);
  add('date >=', query.from);
  add('date <=', query.to);
  add('id >', query.after);
  const where = tests.length === 0 ? '' : `WHERE ${tests.join(' AND ')}`;
  const sql = `SELECT ${RECORD_COLUMNS} FROM records ${where} ORDER BY athlete, id LIMIT $1`;
  return (await client.query(sql, values)).rows.map((row) => readRecordRow(row).record);
}

/** Records after a place, of all athletes or of one. */
export async function recordPage(
  client: PoolClient,
  after: RecordPlace | null,
  limit: number,
  athlete: string | undefined,
): Promise<StoredRecord[]> {
  const sql = `SELECT ${RECORD_COLUMNS} FROM records
    WHERE (athlete, id) > ($1, $2) AND ($3::text IS NULL OR athlete = $3) ORDER BY athlete, id LIMIT $4`;
  const values = [after?.athlete ?? '', after?.id ?? '', athlete ?? null, limit];
  return (await client.query(sql, values)).rows.map((row) => readRecordRow(row).record);
}

/** The records at these places that are there, by placeKey. */
export async function recordsAt(
  client: PoolClient,
  places: readonly RecordPlace[],
): Promise<Map<string, KeptRecord>> {
  const { rows } = await client.query(
    `SELECT ${RECORD_COLUMNS} FROM records
     WHERE (athlete, id) IN (SELECT * FROM unnest($1::text[], $2::text[]))`,
    [places.map(({ athlete }) => athlete), places.map(({ id }) => id)],
  );
  return new Map(
    rows.map(readRecordRow).map((kept) => [placeKey(kept.record.athlete, kept.record.id), kept]),
  );
}

/** Writes records, each place once. */
export async function putRecords(client: PoolClient, all: readonly RecordValues[]): Promise<void> {
  if (all.length === 0) return;
  await client.query(
    `INSERT INTO records (${RECORD_COLUMNS})
     SELECT * FROM unnest($1::text[], $2::text[], $3::text[], $4::text[], $5::text[], $6::text[], $7::bytea[])
     ON CONFLICT (athlete, id) DO UPDATE SET kind = excluded.kind, date = excluded.date,
       fields = excluded.fields, clocks = excluded.clocks, checksum = excluded.checksum`,
    columnsOf(all, 7),
  );
}

/** Rows as arrays of columns, which PostgreSQL takes in one statement. */
export function columnsOf(rows: readonly (readonly unknown[])[], count: number): unknown[][] {
  return Array.from({ length: count }, (_, column) =>
    rows.map((row) => {
      const value = row[column];
      return value instanceof Uint8Array ? Buffer.from(value) : value;
    }),
  );
}
