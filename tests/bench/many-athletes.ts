import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { newToken, sha256 } from '../../daemon/src/server/secrets.ts';
import { serve } from '../../daemon/src/server/serve.ts';
import { openPostgresStore } from '../../daemon/src/store/postgres.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { type Postgres, startPostgres } from '../support/postgres.ts';
import { athleteId, seedAthletes } from './seed-athletes.ts';
import { type Compared, printTable } from './table.ts';
import { thinYear } from './thin-year.ts';

const DATE = '2026-11-25';

/** What is asked of both daemons, and how often; in `{}` goes an athlete's id. */
const ASKED = [
  { name: 'day view', path: `views/day?athlete={}&date=${DATE}`, rounds: 650 },
  { name: 'session', path: 'session', rounds: 120 },
  { name: 'roster, its first page', path: 'views/roster', rounds: 40 },
];
/** A part of the rounds that only warms up. */
const WARM_UP = 0.1;

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
    const one = await houseOf(postgres, join(folder, 'one'), 1);
    const many = await houseOf(postgres, join(folder, 'many'), athletes);
    const rows: Compared[] = [];
    for (const asked of ASKED) rows.push(...(await compare(one, many, { athletes, ...asked })));
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
  { athletes, name, path, rounds }: (typeof ASKED)[number] & { athletes: number },
): Promise<Compared[]> {
  const times: { one: number[]; many: number[] } = { one: [], many: [] };
  for (let round = 0; round < rounds; round++) {
    const who = athleteId((round * 7919) % athletes);
    times.one.push(await one.ask(path.replace('{}', athleteId(0))));
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
      ours: at(times.many.slice(rounds * WARM_UP), share / 100),
      theirs: at(times.one.slice(rounds * WARM_UP), share / 100),
    })),
  ];
}

/** A daemon on a store in which each of so many athletes has a year of records. */
async function houseOf(postgres: Postgres, folder: string, athletes: number) {
  const address = await postgres.database();
  const year = thinYear(DATE);
  await seedAthletes(postgres, { address, folder }, year, athletes);
  const store = await openPostgresStore({ address, folder, role: 'owner' });
  const now = () => Date.parse(`${DATE}T18:00:00Z`);
  const token = await pair(store);
  const { port, stop } = await serve({
    store,
    port: 0,
    pages: join(folder, 'none'),
    files: join(folder, 'bytes'),
    now,
  });
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
