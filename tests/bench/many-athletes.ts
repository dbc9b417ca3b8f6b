import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createHub } from '../../daemon/src/server/hub.ts';
import { newToken, sha256 } from '../../daemon/src/server/secrets.ts';
import { serve } from '../../daemon/src/server/serve.ts';
import { createWriter } from '../../daemon/src/server/writer.ts';
import { openPostgresStore } from '../../daemon/src/store/postgres.ts';
import { openPool } from '../../daemon/src/store/postgres-pool.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { demoSeason } from '../../fixtures/season/generate.ts';
import { startPostgres } from '../support/postgres.ts';
import { type Compared, printTable } from './table.ts';

const DATE = '2026-11-25';
const ATHLETE = 'invented-athlete';
const ROUNDS = 600;

/** Copies the first athlete's records to others, with the checksums that the daemon would give them. */
const COPY = `INSERT INTO platewright.records
  SELECT of.athlete, of.id, kind, date, fields, clocks, substring(sha256(convert_to('[' || to_json(of.athlete)
    || ',' || to_json(of.id) || ',' || to_json(kind) || ',' || coalesce(to_json(date)::text, 'null') || ','
    || to_json(fields) || ',' || to_json(clocks) || ']', 'UTF8')) FOR 16)
  FROM platewright.records CROSS JOIN generate_series($1::int, $2::int) AS n
  CROSS JOIN LATERAL (SELECT 'athlete' || n AS athlete, CASE WHEN id = $3 THEN 'athlete' || n ELSE id END AS id) of
  WHERE records.athlete = $3`;

/**
 * The day view from a PostgreSQL of one athlete with half a year of records, and from one of
 * `athletes`, each day another one's: ms at the 50th and 99th percentile, interleaved in one run.
 */
export async function benchManyAthletes(athletes: number): Promise<Compared[]> {
  const postgres = await startPostgres();
  if (typeof postgres === 'string') {
    console.log(`many athletes: left out, ${postgres}`);
    return [];
  }
  const folder = mkdtempSync(join(tmpdir(), 'platewright-many-'));
  try {
    const one = await houseOf(await postgres.database(), join(folder, 'one'), 0);
    const many = await houseOf(await postgres.database(), join(folder, 'many'), athletes);
    const times: { one: number[]; many: number[] } = { one: [], many: [] };
    for (let round = -50; round < ROUNDS; round++) {
      const who = `athlete${1 + (((round + 50) * 7919) % athletes)}`;
      const took = { one: await one.day(ATHLETE), many: await many.day(who) };
      if (round < 0) continue;
      times.one.push(took.one);
      times.many.push(took.many);
    }
    const rows = ([50, 99] as const).map((share) => ({
      what: `day view of one of ${athletes} athletes, ${share}th percentile`,
      unit: 'ms',
      ours: at(times.many, share / 100),
      reference: 'the same of one alone',
      theirs: at(times.one, share / 100),
    }));
    await one.stop();
    await many.stop();
    return rows;
  } finally {
    postgres.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function houseOf(address: string, folder: string, athletes: number) {
  const store = await openPostgresStore({ address, folder, role: 'owner' });
  const now = () => Date.parse(`${DATE}T18:00:00Z`);
  await createWriter({ store, hub: createHub(0), now }).push(demoSeason(DATE));
  if (athletes > 0) await copyTo(address, athletes);
  const token = await pair(store);
  const { port, stop } = await serve({ store, port: 0, pages: join(folder, 'none'), now });
  const headers = { cookie: `platewright-${port}=${token}` };
  return {
    stop,
    async day(athlete: string): Promise<number> {
      const start = performance.now();
      const address = `http://127.0.0.1:${port}/v1/views/day?athlete=${athlete}&date=${DATE}`;
      const answer = await fetch(address, { headers });
      await answer.text();
      if (!answer.ok) throw new Error(`the day view answered ${answer.status}`);
      return performance.now() - start;
    },
  };
}

async function copyTo(address: string, athletes: number): Promise<void> {
  const pool = openPool(address);
  for (let first = 1; first <= athletes; first += 50) {
    await pool.query(COPY, [first, Math.min(first + 49, athletes), ATHLETE]);
  }
  await pool.query('VACUUM ANALYZE platewright.records');
  await pool.end();
}

async function pair(store: Store): Promise<string> {
  const token = newToken();
  const at = Date.parse(`${DATE}T18:00:00Z`);
  await store.putDevice({
    ...{ id: 'page', name: 'Page', kind: 'dashboard', origin: null, tokenHash: sha256(token) },
    ...{ pairedAt: at, lastSeenAt: at, revokedAt: null },
    rights: { athlete: null, access: 'write' },
  });
  return token;
}

function at(times: readonly number[], share: number): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length * share)] ?? Number.NaN;
}

if (import.meta.main) printTable(await benchManyAthletes(Number(process.argv[2] ?? 200)));
