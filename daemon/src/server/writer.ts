import type { Change } from '@platewright/core/changes/change.ts';
import { whyRefused } from '@platewright/core/changes/check.ts';
import {
  type Clock,
  clockTime,
  laterClock,
  MAX_AHEAD_MS,
  nextClock,
} from '@platewright/core/changes/clock.ts';
import type { Edit } from '@platewright/core/protocol/records.ts';
import type { Outcome } from '@platewright/core/protocol/sync.ts';
import type { Stamp, Store, StoredDevice } from '../store/store.ts';
import { toChanges } from './edits.ts';
import { createGroups } from './groups.ts';
import type { Hub } from './hub.ts';
import { createTurns } from './turns.ts';

export type Writer = ReturnType<typeof createWriter>;

/** The one way into the store: a write at a time, stamped, with what belongs to it, and told to who listens. */
export function createWriter({ store, now, hub }: { store: Store; now(): number; hub: Hub }) {
  const inTurn = createTurns();

  async function append(changes: readonly Change[]): Promise<Outcome[]> {
    const larders = await newLarders(changes);
    const stamp = clampAhead(now(), await store.latestClock());
    const outcomes = await store.append([...changes, ...larders], stamp);
    const last = outcomes.findLast(({ outcome }) => outcome === 'stored');
    if (last?.outcome === 'stored') hub.changed(last.seq);
    return outcomes.slice(0, changes.length);
  }

  /** The starter larder of each athlete whose record these changes begin. */
  async function newLarders(changes: readonly Change[]): Promise<Change[]> {
    const larders: Change[] = [];
    for (const { athlete, kind, record, fields } of changes) {
      if (kind !== 'athlete' || record !== athlete || whyRefused({ kind, fields }) !== null) continue;
      if ((await store.record(athlete, record)) !== null) continue;
      // Read when it is sown, because few starts see an athlete begin.
      const { starterLarder } = await import('./starter.ts');
      larders.push(...starterLarder(athlete));
    }
    return larders;
  }

  return {
    /** Changes of a replica; safe to repeat. */
    push: createGroups(inTurn, append),

    /** Edits of a page, all or none, stamped as made now by `device`. Throws ProblemError when one can't be kept. */
    edit: (
      edits: readonly Edit[],
      device: Pick<StoredDevice, 'id' | 'rights'>,
    ): Promise<{ athlete: string; id: string }[]> =>
      inTurn(async () => {
        const changes = await toChanges(edits, { store, now: now(), device });
        await append(changes);
        return changes.map(({ athlete, record }) => ({ athlete, id: record }));
      }),
  };
}

/**
 * Keeps clocks as they are, except those more than MAX_AHEAD_MS ahead of the daemon's time: they are taken as made now,
 * after all that the daemon has seen, in the order in which they came.
 */
export function clampAhead(nowMs: number, latestStored: Clock | null): Stamp {
  let latest = latestStored;
  return (clock, device) => {
    const stamped = clockTime(clock) > nowMs + MAX_AHEAD_MS ? nextClock(latest, nowMs, device) : clock;
    latest = laterClock(latest, stamped);
    return stamped;
  };
}
