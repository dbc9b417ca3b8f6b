import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { newToken, sha256 } from '../../daemon/src/server/secrets.ts';
import { serve } from '../../daemon/src/server/serve.ts';
import { openPostgresStore } from '../../daemon/src/store/postgres.ts';
import { openPool } from '../../daemon/src/store/postgres-pool.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { startPostgres } from '../support/postgres.ts';
import { type Compared, printTable } from './table.ts';
import { thinYear } from './thin-year.ts';

const DATE = '2026-11-25';
const ROUNDS = 650;
const WARM_UP = 50;

/** What is asked of both daemons; in `{}` goes an athlete's id. */
const ASKED: Readonly<Record<string, string>> = {
  'day view': `views/day?athlete={}&date=${DATE}`,
  session: 'session',
  'roster, its first page': 'views/roster',
};

/**
 * Answers from a PostgreSQL store of one athlete with a year of records, and from one of `athletes`, the day view each
 * time of another one: ms at the 50th and 99th percentile, interleaved in one run. Also the first answer of each kind.
 */
export async function benchManyAthletes(athletes: number): Promise<Compared[]> {
  const postgres = await startPostgres();
  if (typeof postgres === 'string') {
    console.log(`many athletes: left out, ${postgres}`);
    return [];
  }
  const folder = mkdtempSync(join(tmpdir(), 'platewright-many-'));
  try {
    const one = await houseOf(await postgres.database(), join(folder, 'one'), 1);
    const many = await houseOf(await postgres.database(), join(folder, 'many'), athletes);
    const rows: Compared[] = [];
    for (const [name, path] of Object.entries(ASKED)) {
      rows.push(...(await compare(one, many, { athletes, name, path })));
    }
    await one.stop();
    await many.stop();
    return rows;
  } finally {
    postgres.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

type House = Awaited<ReturnType<typeof houseOf>>;

async function compare(
  one: House,
  many: House,
  { athletes, name, path }: { athletes: number; name: string; path: string },
): Promise<Compared[]> {
  const times: { one: number[]; many: number[] } = { one: [], many: [] };
  for (let round = 0; round < ROUNDS; round++) {
    const who = `athlete${(round * 7919) % athletes}`;
    times.one.push(await one.ask(path.replace('{}', 'athlete0')));
    times.many.push(await many.ask(path.replace('{}', who)));
  }
  const row = { unit: 'ms', reference: 'the same of one alone' };
  const first = { ...row, ours: times.many[0] ?? Number.NaN, theirs: times.one[0] ?? Number.NaN };
  const what = `${name} of ${athletes} athletes, ${many.entriesADay.toFixed(1)} entries a day for a year`;
  return [
    { what: `${what}, first answer`, ...first },
    ...([50, 99] as const).map((share) => ({
      what: `${what}, ${share}th percentile`,
      ...row,
      ours: at(times.many.slice(WARM_UP), share / 100),
      theirs: at(times.one.slice(WARM_UP), share / 100),
    })),
  ];
}

/** A daemon on a store in which each of so many athletes has a year of records, appended as a daemon does. */
async function houseOf(address: string, folder: string, athletes: number) {
  const store = await openPostgresStore({ address, folder, role: 'owner' });
  const year = thinYear(DATE);
  const start = performance.now();
  for (let n = 0; n < athletes; n++) {
    await store.append(year.of(`athlete${n}`), (clock) => clock);
    if (n % 500 === 499)
      console.error(`  ${n + 1} athletes, ${Math.round((performance.now() - start) / 1000)} s`);
  }
  await tidy(address);
  const now = () => Date.parse(`${DATE}T18:00:00Z`);
  const token = await pair(store);
  const { port, stop } = await serve({ store, port: 0, pages: join(folder, 'none'), now });
  const headers = { cookie: `platewright-${port}=${token}`, 'sec-fetch-site': 'same-origin' };
  return {
    stop,
    entriesADay: year.entriesADay,
    async ask(path: string): Promise<number> {
      const start = performance.now();
      const answer = await fetch(`http://127.0.0.1:${port}/v1/${path}`, { headers });
      await answer.text();
      if (!answer.ok) throw new Error(`${path} was answered with ${answer.status}`);
      return performance.now() - start;
    },
  };
}

/** What PostgreSQL does by itself in a store that grew over a year. */
async function tidy(address: string): Promise<void> {
  const pool = openPool(address);
  await pool.query('VACUUM ANALYZE');
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
