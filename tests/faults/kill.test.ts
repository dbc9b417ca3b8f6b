import { setTimeout as wait } from 'node:timers/promises';
import type { Change } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { type Daemon, pairExtension, platewright, startDaemon, temporaryFolder } from './daemon-process.ts';

const KILLS = 20;
const PUSHERS = 4;
const BATCH = 5;

let folder: ReturnType<typeof temporaryFolder>;
let daemon: Daemon;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(async () => {
  await daemon.stop('SIGKILL');
  folder.remove();
});

function batchOf(round: number, pusher: number, number: number): Change[] {
  return Array.from({ length: BATCH }, (_, i) => {
    const id = `c-${round}-${pusher}-${number}-${i}`;
    const clock = formatClock(1_000_000 + round, i, `p${pusher}`);
    return {
      id,
      athlete: 'ann',
      device: `p${pusher}`,
      clock,
      kind: 'weigh-in',
      record: id,
      fields: { kg: 80 },
    };
  });
}

class Load {
  /** Outcomes the daemon told us, by id. */
  readonly acknowledged = new Map<string, Outcome>();
  readonly sent: Change[] = [];
  private readonly daemon: Daemon;
  private readonly headers: Record<string, string>;

  constructor(daemon: Daemon, headers: Record<string, string>) {
    this.daemon = daemon;
    this.headers = headers;
  }

  async push(changes: Change[]): Promise<Outcome[]> {
    const init = { method: 'POST', headers: this.headers, body: JSON.stringify({ changes }) };
    const { outcomes } = await (await fetch(`${this.daemon.url}/v1/push`, init)).json();
    for (const outcome of outcomes) this.acknowledged.set(outcome.id, outcome);
    return outcomes;
  }

  /** Pushes batch after batch until the daemon is gone. */
  async keepPushing(round: number, pusher: number): Promise<void> {
    for (let number = 0; ; number++) {
      const batch = batchOf(round, pusher, number);
      this.sent.push(...batch);
      try {
        await this.push(batch);
      } catch {
        return;
      }
    }
  }
}

it('killed at any moment it loses nothing it acknowledged, and a retry doubles nothing', async () => {
  const moments = fc.sample(fc.integer({ min: 10, max: 200 }), { numRuns: KILLS, seed: 20260302 });
  daemon = await startDaemon(folder.path);
  const headers = await pairExtension(daemon);
  const sent: Change[] = [];
  const acknowledged = new Map<string, Outcome>();
  let unknown = 0;
  for (const [round, moment] of moments.entries()) {
    const load = new Load(daemon, headers);
    const pushers = Array.from({ length: PUSHERS }, (_, pusher) => load.keepPushing(round, pusher));
    await wait(moment);
    await daemon.stop('SIGKILL');
    await Promise.all(pushers);

    daemon = await startDaemon(folder.path);
    const retry = new Load(daemon, headers);
    for (let at = 0; at < load.sent.length; at += 100) {
      for (const outcome of await retry.push(load.sent.slice(at, at + 100))) {
        const told = load.acknowledged.get(outcome.id);
        if (told !== undefined) expect(outcome).toEqual({ ...told, outcome: 'known' });
        else expect(['stored', 'known']).toContain(outcome.outcome);
        if (told === undefined && outcome.outcome === 'known') unknown += 1;
      }
    }
    sent.push(...load.sent);
    for (const [id, outcome] of retry.acknowledged) acknowledged.set(id, outcome);
  }
  await daemon.stop('SIGTERM');

  const store = openSqliteStore(`${folder.path}/data/platewright`, 'owner');
  const { changes } = await store.changesSince(0, 1_000_000);
  expect(changes.map(({ id }) => id).sort()).toEqual(sent.map(({ id }) => id).sort());
  expect(acknowledged.size).toBe(sent.length);
  expect(await store.records({ kind: 'weigh-in' })).toHaveLength(sent.length);
  expect(await store.verify()).toEqual([]);
  await store.close();
  console.log(
    `${KILLS} kills, ${sent.length} changes, ${unknown} stored but not acknowledged before the retry`,
  );
  expect(platewright(folder.path, ['doctor']).stdout).toContain('all sound');
});
