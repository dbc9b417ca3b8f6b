import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, createServer, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import type { Change } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import { uuidV7 } from '@platewright/core/records/uuid.ts';
import { issueCode } from '../../daemon/src/server/issue-code.ts';
import { serve } from '../../daemon/src/server/serve.ts';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { listen } from '../support/port.ts';
import { type Compared, median, printTable } from './table.ts';

const CONNECTIONS = 8;
const ROUNDS = 9;
const SIZES = [
  { batch: 1, pushes: 400 },
  { batch: 1000, pushes: 8 },
];

/** Makes a batch durable. */
type Sink = (batch: readonly Change[]) => Promise<void>;

interface Contender {
  name: string;
  sink: Sink;
  close(): Promise<void>;
}

/**
 * Durable pushes through the whole daemon (HTTP, pairing, checks, merge, checksums) against bare node:sqlite inserts and
 * against node:http with the same inserts, in one run and interleaved: changes a second, median of the rounds.
 */
export async function benchPush(): Promise<Compared[]> {
  const rows: Compared[] = [];
  const folder = mkdtempSync(join(tmpdir(), 'platewright-bench-'));
  const contenders = [bare(folder), await bareHttp(folder), await daemon(folder)];
  for (const { batch, pushes } of SIZES) {
    const rates = contenders.map((): number[] => []);
    for (let round = 0; round < ROUNDS; round++) {
      for (let i = 0; i < contenders.length; i++) {
        const place = (i + round) % contenders.length;
        const contender = contenders[place];
        if (contender !== undefined) rates[place]?.push(await rateOf(contender.sink, batch, pushes));
      }
    }
    const [bareRate = Number.NaN, httpRate = Number.NaN, ours = Number.NaN] = rates.map(median);
    const row = { what: `durable push, ${batch} at a time`, unit: 'changes/s', ours };
    rows.push({ ...row, reference: contenders[0]?.name ?? '', theirs: bareRate });
    rows.push({ ...row, reference: contenders[1]?.name ?? '', theirs: httpRate });
  }
  for (const contender of contenders) await contender.close();
  rmSync(folder, { recursive: true });
  return rows;
}

let made = 0;

/** An id as a device makes it. */
function newId(): string {
  return uuidV7(1_700_000_000_000 + made, randomBytes(10));
}

function batchOf(size: number): Change[] {
  return Array.from({ length: size }, () => {
    made += 1;
    const fields = {
      ...{
        date: '2026-03-02',
        meal: 2,
        food: 'starter-05064',
        name: 'Chicken breast, roasted',
        grams: 150,
        at: 1,
      },
      per100: { energyKcal: 165, proteinG: 31, carbohydrateG: 0, fatG: 3.6, sodiumMg: 74 },
    };
    const clock = formatClock(1_700_000_000_000 + made, 0, 'bench');
    return {
      id: newId(),
      athlete: 'ann',
      device: 'bench',
      clock,
      kind: 'entry',
      record: newId(),
      fields,
    };
  });
}

/** Changes a second. */
async function rateOf(sink: Sink, size: number, pushes: number): Promise<number> {
  const batches = Array.from({ length: pushes }, () => batchOf(size));
  const start = performance.now();
  await Promise.all(
    Array.from({ length: CONNECTIONS }, async () => {
      for (let batch = batches.pop(); batch !== undefined; batch = batches.pop()) await sink(batch);
    }),
  );
  return (1000 * size * pushes) / (performance.now() - start);
}

function openBare(path: string): { insert: (batch: readonly Change[]) => void; close(): void } {
  const db = new DatabaseSync(path);
  db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL');
  db.exec('CREATE TABLE changes (seq INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, body TEXT NOT NULL)');
  const statement = db.prepare('INSERT INTO changes (id, body) VALUES (?, ?)');
  return {
    insert(batch) {
      db.exec('BEGIN');
      for (const change of batch) statement.run(change.id, JSON.stringify(change));
      db.exec('COMMIT');
    },
    close: () => db.close(),
  };
}

function bare(folder: string): Contender {
  const { insert, close } = openBare(join(folder, 'bare.sqlite'));
  return { name: 'node:sqlite', sink: async (batch) => insert(batch), close: async () => close() };
}

async function bareHttp(folder: string): Promise<Contender> {
  const { insert, close } = openBare(join(folder, 'http.sqlite'));
  const server = createServer((incoming, answer) => {
    const chunks: Uint8Array[] = [];
    incoming.on('data', (chunk) => chunks.push(chunk));
    incoming.on('end', () => {
      const { changes } = JSON.parse(Buffer.concat(chunks).toString());
      insert(changes);
      answer.end(JSON.stringify({ stored: changes.length }));
    });
  });
  const port = await listen(server);
  const client = poster(port, {});
  return {
    name: 'node:http + node:sqlite',
    sink: client.post,
    async close() {
      client.close();
      server.close();
      close();
    },
  };
}

async function daemon(folder: string): Promise<Contender> {
  const store = openSqliteStore(join(folder, 'store'), 'owner');
  const running = await serve({
    store,
    port: 0,
    pages: join(folder, 'none'),
    files: join(folder, 'bytes'),
    now: Date.now,
  });
  const { code } = await issueCode(store, Date.now());
  const paired = await fetch(`http://127.0.0.1:${running.port}/v1/pair`, {
    method: 'POST',
    headers: { origin: EXTENSION, 'content-type': 'application/json' },
    body: JSON.stringify({ code, name: 'bench', kind: 'extension' }),
  });
  const { token } = await paired.json();
  const client = poster(running.port, { authorization: `Bearer ${token}`, origin: EXTENSION });
  return {
    name: 'the daemon',
    sink: client.post,
    async close() {
      client.close();
      await running.stop();
    },
  };
}

function poster(port: number, headers: Record<string, string>): { post: Sink; close(): void } {
  const agent = new Agent({ keepAlive: true, maxSockets: CONNECTIONS });
  return {
    post: (changes) =>
      new Promise((resolve, reject) => {
        const options = { port, host: '127.0.0.1', path: '/v1/push', method: 'POST', agent };
        const sent = request(
          { ...options, headers: { ...headers, 'content-type': 'application/json' } },
          (answer) => {
            answer.resume();
            answer.once('end', () =>
              answer.statusCode === 200 ? resolve() : reject(new Error(`${answer.statusCode}`)),
            );
          },
        );
        sent.once('error', reject);
        sent.end(JSON.stringify({ changes }));
      }),
    close: () => agent.destroy(),
  };
}

if (import.meta.main) printTable(await benchPush());
