import type { Change } from '@platewright/core/changes/change.ts';
import {
  MAX_PULL,
  MAX_PUSH,
  MAX_SNAPSHOT,
  type PullResponse,
  type PushResponse,
  type SnapshotResponse,
} from '@platewright/core/protocol/sync.ts';
import { absorb, absorbSnapshot } from './absorb.ts';
import type { Source } from './edit.ts';
import { settle } from './outbox.ts';
import type { Replica } from './port.ts';
import { refillOutbox, startRecovery } from './recover.ts';
import type { Head } from './rows.ts';

/** How a request ended. `too-much` says that the batch, not the connection, is at fault. */
export type Answer<T> =
  | { ok: true; value: T }
  | { ok: false; why: 'offline' | 'unpaired' | 'too-much' | 'refused'; detail: string };

export interface Daemon {
  push(changes: readonly Change[]): Promise<Answer<PushResponse>>;
  pull(from: Pick<Head, 'seq' | 'mark' | 'reached'>, limit: number): Promise<Answer<PullResponse>>;
  snapshot(from: Pick<Head, 'snapshot' | 'reached'>, limit: number): Promise<Answer<SnapshotResponse>>;
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

type Step = 'recover' | 'push' | 'pull' | 'snapshot' | SyncEnd;

/** Steps after which a sync gives up for now: a store that changes its name again and again must not hold us for ever. */
const MAX_STEPS = 10_000;
/** How far our idea of the daemon's time may be off before it is worth a write. */
const CLOCK_TOLERANCE_MS = 1000;
const DONE: SyncEnd = { state: 'done', detail: '' };

/**
 * Brings replica and daemon to the same state. All it knows lies in the replica, so it can be stopped at any await and
 * started anew.
 *
 *   start ─► recover ─┬─ all is known ──────────────────────► push
 *                     ├─ something was sent, or put back ───► pull
 *                     └─ a snapshot was begun ──────────────► snapshot
 *
 *   push ─┬─ some were taken, or nothing waits ─────────────► pull
 *         └─ one alone was too much, and is rejected ───────► push
 *   pull ─┬─ more pages ────────────────────────────────────► pull
 *         ├─ something waits ───────────────────────────────► push
 *         ├─ nothing waits ─────────────────────────────────► done
 *         └─ the log no longer begins at 0 ─────────────────► snapshot
 *   snapshot ─┬─ more pages ────────────────────────────────► snapshot
 *             └─ the last page ─────────────────────────────► pull
 *
 *   any step ── the store has another name, or its log is not the one we know ─► recover: all goes back in the outbox
 *   any step ── no connection ─► offline    ── token not known ─► unpaired    ── anything else ─► refused
 *
 * An end other than `done` is tried again by the next alarm.
 */
export async function sync(ports: SyncPorts): Promise<SyncEnd> {
  let step: Step = 'recover';
  for (let steps = 0; typeof step === 'string'; steps += 1) {
    if (steps === MAX_STEPS)
      return { state: 'refused', detail: 'The sync did not come to an end. It goes on within a minute.' };
    step = await take[step](ports);
  }
  return step;
}

const take = { recover, push, pull, snapshot };

async function recover({ replica, newId }: SyncPorts): Promise<Step> {
  const { recovery, snapshot, reached } = await replica.look((tx) => tx.head());
  if (recovery !== null) await refillOutbox(replica, newId);
  if (snapshot !== null) return 'snapshot';
  return recovery === null && reached === null ? 'push' : 'pull';
}

async function push(ports: SyncPorts): Promise<Step> {
  const { replica, daemon } = ports;
  const waiting = await replica.look((tx) => tx.waiting(MAX_PUSH));
  for (let size = waiting.length; size > 0; size = Math.floor(size / 2)) {
    const batch = waiting.slice(0, size);
    const answer = await daemon.push(batch.map((row) => row.change));
    if (answer.ok) {
      if (await isUnknownStore(ports, answer.value)) return 'recover';
      const settled = await settle(replica, batch, answer.value);
      // What was reached is looked for in the log before more is sent: only so is a store that was set back noticed.
      if (settled > 0) return 'pull';
      return { state: 'refused', detail: 'The daemon said nothing about the changes it was sent.' };
    }
    if (answer.why !== 'too-much') return { state: answer.why, detail: answer.detail };
    if (size === 1) {
      // One change alone that the daemon can't even read must not stand in the way of all others.
      const outcomes = batch.map(
        ({ change: { id } }) => ({ id, outcome: 'rejected', reason: answer.detail }) as const,
      );
      await settle(replica, batch, { outcomes, reached: null });
      return 'push';
    }
  }
  return 'pull';
}

async function pull(ports: SyncPorts): Promise<Step> {
  const { replica, daemon } = ports;
  const head = await replica.look((tx) => tx.head());
  const answer = await daemon.pull(head, MAX_PULL);
  if (!answer.ok) return endOf(answer);
  const page = answer.value;
  if (await isUnknownStore(ports, page)) return 'recover';
  if ('reset' in page) {
    return head.seq === 0 && head.reached === null ? 'snapshot' : await startAnew(ports, page);
  }
  await absorb(replica, head.seq, page);
  if (page.more) return 'pull';
  const waiting = await replica.look((tx) => tx.waiting(1));
  return waiting.length > 0 ? 'push' : DONE;
}

async function snapshot(ports: SyncPorts): Promise<Step> {
  const { replica, daemon } = ports;
  const head = await replica.look((tx) => tx.head());
  const answer = await daemon.snapshot(head, MAX_SNAPSHOT);
  if (!answer.ok) return endOf(answer);
  const page = answer.value;
  if (await isUnknownStore(ports, page)) return 'recover';
  if ('reset' in page) return await startAnew(ports, page);
  await absorbSnapshot(replica, head.snapshot, page);
  return page.more ? 'snapshot' : 'pull';
}

async function startAnew(
  { replica }: SyncPorts,
  { store, rights }: Pick<PullResponse, 'store' | 'rights'>,
): Promise<Step> {
  await startRecovery(replica, { store, rights });
  return 'recover';
}

/** No batch of ours is at fault when an answer is not to be had. */
function endOf(answer: Extract<Answer<unknown>, { ok: false }>): SyncEnd {
  return { state: answer.why === 'too-much' ? 'refused' : answer.why, detail: answer.detail };
}

/**
 * Notes the daemon's time, its store and what we may do there. True when the store is another one than before, or lets us
 * see other athletes, and a recovery has begun.
 */
async function isUnknownStore(
  { replica, now }: SyncPorts,
  { store, rights, now: daemonNow }: Pick<PushResponse, 'store' | 'rights' | 'now'>,
): Promise<boolean> {
  const head = await replica.look((tx) => tx.head());
  if (head.store !== null && (head.store !== store || head.rights.athlete !== rights.athlete)) {
    await startRecovery(replica, { store, rights });
    return true;
  }
  const offsetMs = daemonNow - now();
  const isOff = Math.abs(offsetMs - head.offsetMs) > CLOCK_TOLERANCE_MS;
  if (head.store === null || isOff || head.rights.access !== rights.access) {
    await replica.transact(async (tx) => {
      await tx.putHead({ ...(await tx.head()), store, rights, offsetMs });
    });
  }
  return false;
}
