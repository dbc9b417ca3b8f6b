import type { Change } from '@platewright/core/changes/change.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import type { PoolClient } from 'pg';
import { appendChanges } from './append.ts';
import { type ChangeRow, type FoldedChange, foldedValues, readChange, readFolded } from './change-row.ts';
import { HEAD_COLUMNS, type Head, headValues, readHead } from './head-row.ts';
import { columnsOf, putRecords, recordsAt } from './postgres-records.ts';
import { FOLDED, HEAD } from './row-check.ts';
import { hex } from './rows.ts';
import type { ChangePage, Stamp } from './store.ts';

const CHANGES = 'SELECT seq, id, body, hash, before FROM changes';
/** Changes folded by one statement. */
const FOLDED_AT_A_TIME = 1000;

export async function readLogHead(client: PoolClient, lock: '' | 'FOR UPDATE' = ''): Promise<Head> {
  return readHead((await client.query(`${HEAD} ${lock}`)).rows[0]);
}

/** Appends within the transaction of `client`; the lock on the head lets one append at a time. */
export async function appendToLog(
  client: PoolClient,
  changes: readonly Change[],
  stamp: Stamp,
): Promise<Outcome[]> {
  const head = await readLogHead(client, 'FOR UPDATE');
  const known = await knownOf(
    client,
    head,
    changes.map(({ id }) => id),
  );
  const records = await recordsAt(
    client,
    changes.map(({ athlete, record }) => ({ athlete, id: record })),
  );
  const done = appendChanges(changes, stamp, { head, known, records });
  if (done.changes.length === 0) return done.outcomes;
  await insertChanges(client, head.hash, done.changes);
  await putRecords(client, [...done.made, ...done.changed]);
  await updateHead(client, done.head);
  return done.outcomes;
}

/** Changes after a place, of all athletes or of one. */
export async function changesAfter(
  client: PoolClient,
  seq: number,
  limit: number,
  athlete: string | undefined,
): Promise<ChangePage | 'folded'> {
  const { foldedSeq, foldedHash, seq: end } = await readLogHead(client);
  if (seq < foldedSeq) return 'folded';
  const { rows } = await client.query(
    `${CHANGES} WHERE seq > $1 ${athlete === undefined ? '' : 'AND athlete = $3'} ORDER BY seq LIMIT $2`,
    athlete === undefined ? [seq, limit + 1] : [seq, limit + 1, athlete],
  );
  const page = rows.slice(0, limit).map((row) => readChange(row, foldedHash));
  const more = rows.length > limit;
  const last = more ? page.at(-1)?.seq : end;
  return { changes: page.map(({ change }) => change), seq: Math.max(seq, last ?? seq), more };
}

/** Checksum of the log up to a place, in hex. */
export async function logMark(client: PoolClient, seq: number): Promise<string | null> {
  if (seq === 0) return '';
  const { foldedSeq, foldedHash } = await readLogHead(client);
  if (seq === foldedSeq) return foldedHash;
  const { rows } = await client.query('SELECT hash FROM changes WHERE seq = $1', [seq]);
  return rows[0] === undefined ? null : hex(rows[0], 'hash');
}

/** Folds the changes before `before`, and returns how many. */
export async function foldLog(client: PoolClient, before: number): Promise<number> {
  const head = await readLogHead(client, 'FOR UPDATE');
  const last = Math.min(before - 1, head.seq);
  if (last <= head.foldedSeq) return 0;
  let { foldedSeq, foldedHash } = head;
  while (foldedSeq < last) {
    const { rows } = await client.query(`${CHANGES} WHERE seq > $1 AND seq <= $2 ORDER BY seq LIMIT $3`, [
      ...[foldedSeq, last, FOLDED_AT_A_TIME],
    ]);
    const page = rows.map((row) => readChange(row, head.foldedHash));
    const values = page.map(({ seq, change }) => foldedValues(change.id, { seq, clock: change.clock }));
    await client.query(
      `INSERT INTO folded (id, seq, clock, checksum)
       SELECT * FROM unnest($1::text[], $2::bigint[], $3::text[], $4::bytea[])`,
      columnsOf(values, 4),
    );
    foldedSeq = page.at(-1)?.seq ?? last;
    foldedHash = page.at(-1)?.hash ?? foldedHash;
  }
  await client.query('DELETE FROM changes WHERE seq <= $1', [last]);
  await updateHead(client, { ...head, foldedSeq, foldedHash });
  return last - head.foldedSeq;
}

async function knownOf(
  client: PoolClient,
  { foldedSeq, foldedHash }: Head,
  ids: readonly string[],
): Promise<Map<string, FoldedChange>> {
  const known = new Map<string, FoldedChange>();
  const { rows } = await client.query(`${CHANGES} WHERE id = ANY($1)`, [ids]);
  for (const row of rows) {
    const { seq, change } = readChange(row, foldedHash);
    known.set(change.id, { seq, clock: change.clock });
  }
  if (foldedSeq === 0) return known;
  const folded = await client.query(`${FOLDED} WHERE id = ANY($1)`, [ids]);
  for (const row of folded.rows) known.set(String(row.id), readFolded(row));
  return known;
}

/** Writes rows of the log that follow a row with the hash `before`. */
export async function insertChanges(
  client: PoolClient,
  before: string,
  rows: readonly ChangeRow[],
): Promise<void> {
  const values = rows.map(({ seq, change, body, hash }, i) => {
    const hashes = [hash, rows[i - 1]?.hash ?? before].map((each) => Buffer.from(each, 'hex'));
    return [seq, change.id, change.athlete, body, ...hashes];
  });
  await client.query(
    `INSERT INTO changes (seq, id, athlete, body, hash, before)
     SELECT * FROM unnest($1::bigint[], $2::text[], $3::text[], $4::text[], $5::bytea[], $6::bytea[])`,
    columnsOf(values, 6),
  );
}

async function updateHead(client: PoolClient, head: Head): Promise<void> {
  await client.query(
    `UPDATE head SET (${HEAD_COLUMNS}) = ROW($1::bigint, $2::bytea, $3::text, $4::bigint, $5::bytea, $6::bytea, $7::bytea)
     WHERE one = 1`,
    [...headValues(head)],
  );
}
