import type { Change } from '@platewright/core/changes/change.ts';
import { formatClock } from '@platewright/core/changes/clock.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import { expect } from 'vitest';
import { openSqliteStore } from '../../daemon/src/store/sqlite.ts';
import { logOf } from '../support/log.ts';

/** `count` weigh-ins, each a record of its own, whose ids begin with `name`. */
export function weighIns(name: string, count: number): Change[] {
  return Array.from({ length: count }, (_, i) => {
    const id = `${name}-${i}`;
    const clock = formatClock(1_000_000, i, 'phone');
    return {
      ...{ id, athlete: 'ann', device: 'phone', clock, kind: 'weigh-in', record: id },
      fields: { date: '2026-03-02', kg: 80, note: id },
    };
  });
}

/** What a device sent to a daemon, and what it was told. */
export class Load {
  readonly sent: Change[] = [];
  /** Outcomes by the id of the change. */
  readonly told = new Map<string, Outcome>();
  /** Statuses of answers other than 200. */
  readonly refusals: number[] = [];
  readonly url: string;
  private readonly headers: Record<string, string>;

  constructor(url: string, headers: Record<string, string>) {
    this.url = url;
    this.headers = headers;
  }

  /** Throws when the daemon is gone. */
  async push(changes: readonly Change[]): Promise<Outcome[]> {
    this.sent.push(...changes);
    const init = { method: 'POST', headers: this.headers, body: JSON.stringify({ changes }) };
    const answer = await fetch(`${this.url}/v1/push`, init);
    const body = await answer.json();
    if (answer.status !== 200) {
      this.refusals.push(answer.status);
      return [];
    }
    for (const outcome of body.outcomes) this.told.set(outcome.id, outcome);
    return body.outcomes;
  }

  /** Pushes batches of `size` until the daemon is gone. */
  async keepPushing(name: string, size: number): Promise<void> {
    for (let number = 0; ; number++) {
      try {
        await this.push(weighIns(`${name}-${number}`, size));
      } catch {
        return;
      }
    }
  }
}

/**
 * Sends everything again, as a device does that was not answered. Nothing may be lost, changed or doubled. Returns how
 * many changes were stored although their device was never told.
 */
export async function sendAgain(load: Load, again: Load): Promise<number> {
  let untold = 0;
  for (let at = 0; at < load.sent.length; at += 500) {
    const outcomes = await again.push(load.sent.slice(at, at + 500));
    expect(again.refusals).toEqual([]);
    for (const outcome of outcomes) {
      const told = load.told.get(outcome.id);
      if (told !== undefined) expect(outcome).toEqual({ ...told, outcome: 'known' });
      else expect(['stored', 'known']).toContain(outcome.outcome);
      if (told === undefined && outcome.outcome === 'known') untold += 1;
    }
  }
  return untold;
}

/** Holds a store that no daemon serves against what was sent and told: sound, nothing lost, doubled or made up. */
export async function checkStore(
  folder: string,
  sent: readonly Change[],
  told: Iterable<string>,
): Promise<void> {
  const store = openSqliteStore(folder, 'owner');
  try {
    const ids = (await logOf(store)).map(({ id }) => id);
    const [known, possible] = [new Set(ids), new Set(sent.map(({ id }) => id))];
    expect(known.size).toBe(ids.length);
    expect([...told].filter((id) => !known.has(id))).toEqual([]);
    expect(ids.filter((id) => !possible.has(id))).toEqual([]);
    expect(await store.records({ kind: 'weigh-in' })).toHaveLength(ids.length);
    expect(await store.verify()).toEqual([]);
  } finally {
    await store.close();
  }
}
