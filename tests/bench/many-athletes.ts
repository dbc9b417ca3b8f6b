import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { newToken, sha256 } from '../../daemon/src/server/secrets.ts';
import { serve } from '../../daemon/src/server/serve.ts';
import { openPostgresStore } from '../../daemon/src/store/postgres.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import type { Store } from '../../daemon/src/store/store.ts';
import { type Postgres, startPostgres } from '../support/postgres.ts';
import { athleteId, seedAthletes } from './seed-athletes.ts';
import { type Compared, printTable } from './table.ts';
import { type ThinYear, thinYear } from './thin-year.ts';

const DATE = '2026-11-25';

/** What is asked of both daemons, and how often; in `{}` goes an athlete's id. */
const ASKED = [
  { name: 'day view', path: `views/day?athlete={}&date=${DATE}`, rounds: 650 },
  { name: 'session', path: 'session', rounds: 120 },
  { name: 'roster, its first page', path: 'views/roster', rounds: 40 },
];
/** A part of the rounds that only warms up. */
const WARM_UP = 0.1;

/** A kind of store, filled with so many athletes who each lived the same year. */
interface Engine {
  name: string;
  open(folder: string, year: ThinYear, athletes: number): Promise<Store>;
}

/**
 * Answers from a store of one athlete with a year of records, and from one of `athletes`, the day view each time of
 * another one: ms at the 50th and 99th percentile, interleaved in one run. Also the first answer of each kind. In SQLite,
 * and in PostgreSQL where it is or can be installed.
 */
export async function benchManyAthletes(athletes: number): Promise<Compared[]> {
  const rows = await benchEngine(sqlite, athletes);
  const postgres = await startPostgres();
  if (typeof postgres === 'string') {
    console.log(`many athletes in PostgreSQL: left out, ${postgres}`);
    return rows;
  }
  try {
    return [...rows, ...(await benchEngine(postgresOn(postgres), athletes))];
  } finally {
    postgres.stop();
  }
}

const sqlite: Engine = {
  name: 'SQLite',
  async open(folder, year, athletes) {
    const store = openSqliteStore(folder, 'owner');
    for (let n = 0; n < athletes; n++) await store.append(year.of(athleteId(n)), (clock) => clock);
    return store;
  },
};

function postgresOn(postgres: Postgres): Engine {
  return {
    name: 'PostgreSQL',
    async open(folder, year, athletes) {
      const address = await postgres.database();
      await seedAthletes(postgres, { address, folder }, year, athletes);
      return await openPostgresStore({ address, folder, role: 'owner' });
    },
  };
}

async function benchEngine(engine: Engine, athletes: number): Promise<Compared[]> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-many-'));
  try {
    const one = await houseOf(engine, join(folder, 'one'), 1);
    const many = await houseOf(engine, join(folder, 'many'), athletes);
    const rows: Compared[] = [];
    for (const asked of ASKED)
      rows.push(...(await compare(one, many, { engine: engine.name, athletes, ...asked })));
    await one.stop();
    await many.stop();
    return rows;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

type House = Awaited<ReturnType<typeof houseOf>>;

async function compare(
  one: House,
  many: House,
  { engine, athletes, name, path, rounds }: (typeof ASKED)[number] & { engine: string; athletes: number },
): Promise<Compared[]> {
  const times: { one: number[]; many: number[] } = { one: [], many: [] };
  for (let round = 0; round < rounds; round++) {
    const who = athleteId((round * 7919) % athletes);
    times.one.push(await one.ask(path.replace('{}', athleteId(0))));
    times.many.push(await many.ask(path.replace('{}', who)));
  }
  const row = { unit: 'ms', reference: 'the same of one alone' };
  const first = { ...row, ours: times.many[0] ?? Number.NaN, theirs: times.one[0] ?? Number.NaN };
  const what = `${engine}: ${name} of ${athletes} athletes, ${many.entriesADay.toFixed(1)} entries a day for a year`;
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
async function houseOf(engine: Engine, folder: string, athletes: number) {
  const year = thinYear(DATE);
  const store = await engine.open(folder, year, athletes);
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

if (import.meta.main) {
  const { values } = parseArgs({ options: { athletes: { type: 'string', default: '200' } } });
  printTable(await benchManyAthletes(Number(values.athletes)));
}
