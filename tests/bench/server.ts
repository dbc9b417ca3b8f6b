import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { Agent, get } from 'node:http';
import { join, resolve } from 'node:path';
import { serve as serveBare } from '@hono/node-server';
import { Hono } from 'hono';
import { serve } from '../../daemon/src/server/serve.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { startDaemon } from '../faults/daemon-process.ts';
import { temporaryFolder } from '../support/folder.ts';
import { freePort } from '../support/port.ts';
import { fullDaemon } from './full-daemon.ts';
import { type Compared, median, printTable } from './table.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const ROUNDS = 9;
const CONNECTIONS = 8;
const REQUESTS = 2000;
const YEARS = 10;
const FOODS = 500;
const MOST_MEMORY_MB = 110;

/** What the guards cost, how long a start takes, and how much memory ten years do. */
export async function benchServer(): Promise<Compared[]> {
  const guards = await benchGuards();
  // As a service runs it; npm start first looks whether something must be built, which takes 10 ms more.
  execFileSync(
    process.execPath,
    [join(ROOT, 'node_modules/vite/bin/vite.js'), 'build', 'daemon', '--logLevel', 'warn'],
    {
      cwd: ROOT,
      stdio: 'ignore',
    },
  );
  process.env.DAEMON_MAIN = join(ROOT, 'daemon/dist/cli/main.cjs');
  try {
    return [guards, await benchStart(), await benchMemory()];
  } finally {
    delete process.env.DAEMON_MAIN;
  }
}

/** The same answer with and without what stands before every route, in turns. */
async function benchGuards(): Promise<Compared> {
  const home = temporaryFolder();
  const store = openSqliteStore(home.path, 'owner');
  const guarded = await serve({ store, port: 0, pages: home.path, files: home.path, now: Date.now });
  const answer = { ok: true, protocol: 1 };
  const app = new Hono().get('/v1/health', (c) => c.json(answer, 200));
  const bare = serveBare({ fetch: app.fetch, port: 0, hostname: '127.0.0.1' });
  await once(bare, 'listening');
  const address = bare.address();
  const ports = [guarded.port, typeof address === 'object' && address !== null ? address.port : 0];
  const rates = ports.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round++) {
    for (const [i, port] of ports.entries()) rates[i]?.push(await rateOf(port));
  }
  await guarded.stop();
  bare.close();
  home.remove();
  const [ours = Number.NaN, theirs = Number.NaN] = rates.map(median);
  return {
    what: 'GET /v1/health behind all guards',
    unit: 'answers/s',
    ours,
    reference: 'the bare route',
    theirs,
  };
}

async function rateOf(port: number): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: CONNECTIONS });
  const start = performance.now();
  let left = REQUESTS;
  await Promise.all(
    Array.from({ length: CONNECTIONS }, async () => {
      while (left-- > 0) await ask(port, agent);
    }),
  );
  agent.destroy();
  return (1000 * REQUESTS) / (performance.now() - start);
}

function ask(port: number, agent: Agent): Promise<void> {
  return new Promise((resolve, reject) => {
    const request = get({ port, host: '127.0.0.1', path: '/v1/health', agent }, (answer) => {
      answer.resume().once('end', resolve);
    });
    request.once('error', reject);
  });
}

const BARE = `
  const { createServer } = require('node:http');
  const { DatabaseSync } = require('node:sqlite');
  const db = new DatabaseSync(process.argv[1]);
  db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE IF NOT EXISTS t (x)');
  createServer((_, answer) => {
    answer.setHeader('content-type', 'application/json').end(JSON.stringify({ ok: true, protocol: 1 }));
  }).listen(process.argv[2], '127.0.0.1');`;

/** From the process's begin to its first answer to GET /v1/health, in turns. The codes that a start prints come later. */
async function benchStart(): Promise<Compared> {
  const home = temporaryFolder();
  const times: { ours: number[]; theirs: number[] } = { ours: [], theirs: [] };
  await (await startDaemon(home.path)).stop('SIGTERM');
  for (let round = 0; round < ROUNDS; round++) {
    const port = await freePort();
    let start = performance.now();
    const starting = startDaemon(home.path, ['start', '--port', String(port)]);
    await answered(port);
    times.ours.push(performance.now() - start);
    await (await starting).stop('SIGTERM');
    start = performance.now();
    const bare = spawn(process.execPath, ['-e', BARE, `${home.path}/bare.sqlite`, String(port)], {
      stdio: 'ignore',
    });
    await answered(port);
    times.theirs.push(performance.now() - start);
    bare.kill('SIGKILL');
    await once(bare, 'exit');
  }
  home.remove();
  const [ours, theirs] = [median(times.ours), median(times.theirs)];
  return {
    what: 'start until the first answer',
    unit: 'ms',
    ours,
    reference: 'bare node:http + node:sqlite',
    theirs,
  };
}

/** Asks until there is an answer. */
async function answered(port: number): Promise<void> {
  const agent = new Agent();
  while (!(await ask(port, agent).then(() => true, wait)));
}

function wait(): Promise<false> {
  return new Promise((resolve) => setTimeout(resolve, 1, false));
}

/** What the process holds after it has shown every page. */
async function benchMemory(): Promise<Compared> {
  const full = await fullDaemon(YEARS, FOODS);
  const { url } = full.daemon;
  for (const view of ['day', 'week', 'body', 'plan', 'larder', 'habits', 'week']) {
    await (await fetch(`${url}/v1/views/${view}`, { headers: full.headers })).text();
  }
  const metrics = await (await fetch(`${url}/v1/metrics`)).text();
  await full.close();
  const bytes = Number(/^process_resident_memory_bytes (\d+)$/m.exec(metrics)?.[1]);
  return {
    what: `memory after all pages of ${YEARS} years`,
    unit: 'MB',
    ours: bytes / 1e6,
    reference: 'what it may take',
    theirs: MOST_MEMORY_MB,
  };
}

if (import.meta.main) printTable(await benchServer());
