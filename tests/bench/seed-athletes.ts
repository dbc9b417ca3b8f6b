import { chainHash } from '../../daemon/src/store/change-row.ts';
import { addUp, checksum } from '../../daemon/src/store/checksum.ts';
import { HEAD_COLUMNS, headValues, readHead } from '../../daemon/src/store/head-row.ts';
import { openPostgresStore } from '../../daemon/src/store/postgres.ts';
import { openPool } from '../../daemon/src/store/postgres-pool.ts';
import { RECORD_COLUMNS } from '../../daemon/src/store/record-row.ts';
import { maybe, text } from '../../daemon/src/store/rows.ts';
import type { Postgres } from '../support/postgres.ts';
import type { ThinYear } from './thin-year.ts';

/** Id of the nth athlete; all are of one length and in order. */
export function athleteId(n: number): string {
  return `athlete${String(n).padStart(6, '0')}`;
}

/**
 * Fills an empty PostgreSQL store with so many athletes who lived the same year. The rows of the first are appended as a
 * daemon does; those of the others are that athlete's with another name and with the checksums and the chain of hashes
 * that follow, in bulk. `verify` finds no fault in them.
 */
export async function seedAthletes(
  postgres: Postgres,
  { address, folder }: { address: string; folder: string },
  year: ThinYear,
  athletes: number,
): Promise<void> {
  const store = await openPostgresStore({ address, folder, role: 'owner' });
  await store.append(year.of(athleteId(0)), (clock) => clock);
  await store.close();
  const pool = openPool(address);
  const first = {
    records: (await pool.query(`SELECT ${RECORD_COLUMNS} FROM records ORDER BY athlete, id`)).rows,
    changes: (await pool.query('SELECT id, body FROM changes ORDER BY seq')).rows,
  };
  const names = RECORD_COLUMNS.split(', ').filter((name) => name !== 'checksum');
  let head = readHead((await pool.query(`SELECT ${HEAD_COLUMNS} FROM head`)).rows[0]);
  const records = postgres.copyInto(address, `platewright.records (${RECORD_COLUMNS})`);
  const changes = postgres.copyInto(address, 'platewright.changes (seq, id, athlete, body, hash, before)');
  const start = performance.now();
  for (let n = 1; n < athletes; n++) {
    const who = athleteId(n);
    const lines = { records: '', changes: '' };
    for (const row of first.records) {
      const values = names.map((name) => maybe(row, name, text)?.replaceAll(athleteId(0), who) ?? null);
      const sum = checksum(...values);
      head.recordsSum = addUp(head.recordsSum, sum);
      lines.records += copied([...values, sum]);
    }
    for (const row of first.changes) {
      const [id, body] = [text(row, 'id'), text(row, 'body')].map((one) => one.replaceAll(athleteId(0), who));
      const [before, seq] = [head.hash, head.seq + 1];
      head = { ...head, seq, hash: chainHash(before, seq, body ?? '') };
      const hashes = [head.hash, before].map((hash) => Buffer.from(hash, 'hex'));
      lines.changes += copied([String(seq), id ?? '', who, body ?? '', ...hashes]);
    }
    await Promise.all([records.write(lines.records), changes.write(lines.changes)]);
    if (n % 500 === 0)
      console.error(`  ${n} athletes after ${Math.round((performance.now() - start) / 1000)} s`);
  }
  await Promise.all([records.end(), changes.end()]);
  await pool.query(
    `UPDATE head SET (${HEAD_COLUMNS}) = ROW($1::bigint, $2::bytea, $3::text, $4::bigint, $5::bytea, $6::bytea, $7::bytea)`,
    [...headValues(head)],
  );
  // What PostgreSQL does by itself in a store that grew over a year.
  await pool.query('VACUUM ANALYZE');
  await pool.end();
}

/** A line of COPY's text format (PostgreSQL manual, COPY, file formats). */
function copied(values: readonly (string | Uint8Array | null)[]): string {
  const columns = values.map((value) => {
    if (value === null) return '\\N';
    if (typeof value === 'string') return value.replaceAll('\\', '\\\\');
    return `\\\\x${Buffer.from(value).toString('hex')}`;
  });
  return `${columns.join('\t')}\n`;
}
