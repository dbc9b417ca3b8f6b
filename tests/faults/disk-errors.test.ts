import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Change } from '@platewright/core/changes/change.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { temporaryFolder } from '../support/folder.ts';
import { type Daemon, pairExtension, startDaemon } from './daemon-process.ts';
import { checkStore, Load, weighIns } from './load.ts';
import { systemTool } from './system-tool.ts';

const strace = systemTool('strace', 'strace');

/** The system calls by which SQLite writes and makes durable. */
const CALLS = ['pwrite64', 'fsync,fdatasync'] as const;
const PUSHES = 2;
const BEFORE = weighIns('before', 20);

type Headers = Record<string, string>;

const traced = (...options: string[]): string[] => [
  strace ?? 'strace',
  ...['-f', '-qq', '--seccomp-bpf', ...options],
];

describe.skipIf(strace === null)('when the disk fails', () => {
  const prepared = temporaryFolder();
  let headers: Headers;
  beforeAll(async () => {
    const daemon = await startDaemon(prepared.path);
    headers = await pairExtension(daemon);
    await new Load(daemon.url, headers).push(BEFORE);
    await daemon.stop('SIGTERM');
  });
  afterAll(() => prepared.remove());

  for (const calls of CALLS) {
    it(`at any ${calls}, once or from then on, nothing that was acknowledged is lost`, async () => {
      const total = await countCalls(prepared.path, headers, calls);
      expect(total).toBeGreaterThan(5);
      const seen = { unstarted: 0, refused: 0, untold: 0, runs: 0 };
      for (let n = 1; n <= total; n++) {
        for (const error of ['EIO', 'ENOSPC']) {
          for (const when of [`${n}`, `${n}+`]) {
            const under = traced(
              '-o',
              '/dev/null',
              `--trace=${calls}`,
              `--inject=${calls}:error=${error}:when=${when}`,
            );
            const result = await runWith(prepared.path, headers, under);
            seen.runs += 1;
            seen.untold += result.untold;
            if (result.refusals === null) seen.unstarted += 1;
            else if (result.refusals.length > 0) seen.refused += 1;
          }
        }
      }
      console.log(`${calls}: ${JSON.stringify(seen)}`);
      expect(seen.refused).toBeGreaterThan(0);
    }, 600_000);
  }
});

async function countCalls(prepared: string, headers: Headers, calls: string): Promise<number> {
  const folder = temporaryFolder();
  const trace = join(folder.path, 'trace');
  try {
    await runWith(prepared, headers, traced('-o', trace, `--trace=${calls}`));
    await new Promise((resolve) => setTimeout(resolve, 200));
    return (readFileSync(trace, 'utf8').match(/ = \d+$/gm) ?? []).length;
  } finally {
    folder.remove();
  }
}

/** A start on a copy of the prepared store, a few pushes, an end without warning; and what is there afterwards. */
async function runWith(prepared: string, headers: Headers, under: readonly string[]) {
  const folder = temporaryFolder();
  cpSync(prepared, folder.path, { recursive: true });
  const data = join(folder.path, 'data/platewright');
  try {
    const load = await loadUnder(folder.path, headers, under);
    const { sent, told, refusals } = load ?? { sent: [], told: new Map<string, Outcome>(), refusals: null };
    for (const status of refusals ?? []) expect([503, 507]).toContain(status);
    await checkStore(data, [...BEFORE, ...sent], [...BEFORE.map(({ id }) => id), ...told.keys()]);
    return { refusals, untold: await storeAgain(data, sent, told) };
  } finally {
    folder.remove();
  }
}

/** Null when the daemon did not start, which it must say in words. */
async function loadUnder(folder: string, headers: Headers, under: readonly string[]): Promise<Load | null> {
  let daemon: Daemon;
  try {
    daemon = await startDaemon(folder, undefined, under);
  } catch (error) {
    expect(String(error)).not.toMatch(/should not happen|at .*\.ts/);
    return null;
  }
  const load = new Load(daemon.url, headers);
  try {
    for (let i = 0; i < PUSHES; i++) await load.push(weighIns(`load-${i}`, 3));
    return load;
  } finally {
    await daemon.stop('SIGKILL');
  }
}

/** What a retry over a sound disk comes to. Returns how many were stored although nobody was told. */
async function storeAgain(
  data: string,
  sent: readonly Change[],
  told: ReadonlyMap<string, Outcome>,
): Promise<number> {
  const store = openSqliteStore(data, 'owner');
  try {
    const outcomes = await store.append(sent, (clock) => clock);
    for (const outcome of outcomes) {
      const before = told.get(outcome.id);
      if (before !== undefined) expect(outcome).toEqual({ ...before, outcome: 'known' });
      else expect(['stored', 'known']).toContain(outcome.outcome);
    }
    return outcomes.filter(({ id, outcome }) => outcome === 'known' && !told.has(id)).length;
  } finally {
    await store.close();
  }
}
