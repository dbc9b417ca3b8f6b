import type { Change } from '@platewright/core/changes/change.ts';
import { MAX_PULL, MAX_PUSH, type PullResponse, type PushResponse } from '@platewright/core/protocol/sync.ts';
import { absorb } from './absorb.ts';
import type { Source } from './edit.ts';
import { settle } from './outbox.ts';
import type { Replica } from './port.ts';
import { refillOutbox, startRecovery } from './recover.ts';

/** How a request ended. `too-much` says that the batch, not the connection, is at fault. */
export type Answer<T> =
  | { ok: true; value: T }
  | { ok: false; why: 'offline' | 'unpaired' | 'too-much' | 'refused'; detail: string };

export interface Daemon {
  push(changes: readonly Change[]): Promise<Answer<PushResponse>>;
  pull(since: number, limit: number): Promise<Answer<PullResponse>>;
}

export interface SyncPorts extends Source {
  replica: Replica;
  daemon: Daemon;
}

/** How a sync ended; `detail` is a sentence for the person, empty when done. */
export interface SyncEnd {
  state: 'done' | 'offline' | 'unpaired' | 'refused';
  detail: string;
}

type Step = 'recover' | 'push' | 'pull' | SyncEnd;

/** Steps after which a sync gives up for now: a store that changes its name again and again must not hold us for ever. */
const MAX_STEPS = 10_000;
/** How far our idea of the daemon's time may be off before it is worth a write. */
const CLOCK_TOLERANCE_MS = 1000;
const DONE: SyncEnd = { state: 'done', detail: '' };

/**
 * Brings replica and daemon to the same state. All it knows lies in the replica, so it can be stopped at any await and
 * started anew.
 *
 *                       the store has another name than when we last met
 *             ┌──────────────┬────────────────────────────────────────────┐
 *             ▼              │                                            │
 *   start ─► recover ─► ┌─ push ◄┐                                      pull ◄┐
 *             │         │    │   │ more waiting                          │ │  │ more pages
 *             │         │    └───┘                                       │ └──┘
 *             │         └────────── nothing waits ──────────────────────►│
 *             └── puts everything back in the outbox, then pulls from 0 ►│
 *                                                                        ├─ something waits ─► push
 *                                                                        └─ nothing waits ───► done
 *
 *   any step ── no connection ─► offline    ── token not known ─► unpaired    ── anything else ─► refused
 *
 * recover does nothing when no recovery is under way. An end other than `done` is tried again by the next alarm.
 */
export async function sync(ports: SyncPorts): Promise<SyncEnd> {
  let step: Step = 'recover';
  for (let steps = 0; typeof step === 'string'; steps += 1) {
    if (steps === MAX_STEPS) return { state: 'refused', detail: 'The sync did not come to an end.' };
    if (step === 'recover') step = await recover(ports);
    else step = step === 'push' ? await push(ports) : await pull(ports);
  }
  return step;
}

async function recover({ replica, newId }: SyncPorts): Promise<Step> {
  const { recovery } = await replica.transact((tx) => tx.head());
  if (recovery === null) return 'push';
  await refillOutbox(replica, newId);
  return 'pull';
}

async function push(ports: SyncPorts): Promise<Step> {
  const { replica, daemon } = ports;
  const waiting = await replica.transact((tx) => tx.waiting(MAX_PUSH));
  for (let size = waiting.length; size > 0; size = Math.floor(size / 2)) {
    const batch = waiting.slice(0, size);
    const answer = await daemon.push(batch.map((row) => row.change));
    if (answer.ok) {
      if (await isNewStore(ports, answer.value)) return 'recover';
      const settled = await settle(replica, batch, answer.value.outcomes);
      if (settled > 0) return 'push';
      return { state: 'refused', detail: 'The daemon said nothing about the changes it was sent.' };
    }
    if (answer.why !== 'too-much') return { state: answer.why, detail: answer.detail };
    if (size === 1) {
      // One change alone that the daemon can't even read must not stand in the way of all others.
      await settle(
        replica,
        batch,
        batch.map((row) => ({ id: row.change.id, outcome: 'rejected', reason: answer.detail })),
      );
      return 'push';
    }
  }
  return 'pull';
}

async function pull(ports: SyncPorts): Promise<Step> {
  const { replica, daemon } = ports;
  const { seq } = await replica.transact((tx) => tx.head());
  const answer = await daemon.pull(seq, MAX_PULL);
  if (!answer.ok) return { state: answer.why === 'too-much' ? 'refused' : answer.why, detail: answer.detail };
  if (await isNewStore(ports, answer.value)) return 'recover';
  await absorb(replica, answer.value);
  if (answer.value.more) return 'pull';
  const waiting = await replica.transact((tx) => tx.waiting(1));
  return waiting.length > 0 ? 'push' : DONE;
}

/** Notes the daemon's time and store. True when the store is another one than before, and a recovery has begun. */
async function isNewStore(
  { replica, now }: SyncPorts,
  answer: { store: string; now: number },
): Promise<boolean> {
  const head = await replica.transact((tx) => tx.head());
  if (head.store !== null && head.store !== answer.store) {
    await startRecovery(replica, answer.store);
    return true;
  }
  const offsetMs = answer.now - now();
  if (head.store === null || Math.abs(offsetMs - head.offsetMs) > CLOCK_TOLERANCE_MS) {
    await replica.transact(async (tx) => {
      await tx.putHead({ ...(await tx.head()), store: answer.store, offsetMs });
    });
  }
  return false;
}
