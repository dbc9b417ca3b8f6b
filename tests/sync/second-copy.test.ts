import 'fake-indexeddb/auto';
import { beforeEach, expect, it, vi } from 'vitest';
import { ATHLETE, change, entryFields } from '../server/fields.ts';
import { served } from '../server/served.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { type FakeBrowser, giveLocksLater } from './fake-browser.ts';

const fake = await vi.hoisted(async () => new (await import('./fake-browser.ts')).FakeBrowser());
vi.mock('wxt/browser', (): { browser: FakeBrowser } => ({ browser: fake }));
giveLocksLater();

/** The worker as the browser starts it anew: nothing is in its memory. */
async function startWorker(before?: { database: { close(): void } }) {
  before?.database.close();
  vi.resetModules();
  const { keepEdits, decide } = await import('../../extension/worker/edits.ts');
  const { pair, unpair } = await import('../../extension/worker/pair.ts');
  const { database, wholeReplica } = await import('../../extension/worker/replica.ts');
  const { requestSync } = await import('../../extension/worker/run-sync.ts');
  await wholeReplica();
  const sync = async () => (await database.meta.get('sync'))?.value;
  return { keepEdits, decide, pair, unpair, database, requestSync, sync };
}

let worker: Awaited<ReturnType<typeof startWorker>>;
beforeEach(async () => {
  fake.items.clear();
  fake.before = async () => {};
  // No daemon answers there.
  const pairing = { address: 'http://127.0.0.1:1', token: 't', device: 'd0', store: 's', joined: true };
  fake.items.set('pairing', pairing);
  worker = await startWorker(worker);
  await worker.database.delete();
  worker = await startWorker(worker);
});

const { fields } = change('c', 'entry', 'e', entryFields('2026-03-02'));
const edits = [{ athlete: ATHLETE, kind: 'entry', record: 'e', fields }];
const copied = () => [...fake.items.keys()].filter((key) => key.startsWith('unsent '));
function failing(deed: 'set' | 'remove'): void {
  fake.before = async (asked, keys) => {
    if (asked === deed && keys?.some((key) => key.startsWith('unsent '))) throw new Error('disk full');
  };
}

/** An edit that the daemon refused. Returns its place in the outbox. */
async function rejectedEdit(): Promise<number> {
  await worker.keepEdits(edits);
  await worker.requestSync();
  const [row] = await worker.database.outbox.toArray();
  if (row === undefined) throw new Error('no edit was kept');
  await worker.database.outbox.put({ ...row, state: 'rejected', reason: 'No.' });
  return row.order;
}

it('that can’t be written does not make a saved edit count as not saved, is told, and made up for', async () => {
  failing('set');
  // Who is told that it was not saved logs it once more.
  expect(await worker.keepEdits(edits)).toMatchObject({ ok: true });
  await worker.requestSync();
  expect(await worker.sync()).toMatchObject({ detail: expect.stringMatching(/second copy.*disk full/) });
  expect(copied()).toEqual([]);
  fake.before = async () => {};
  await worker.requestSync();
  expect(copied()).toHaveLength(1);
  expect(await worker.sync()).toMatchObject({ state: 'offline' });
});

it('that still has a change which was let go loses it with the next sync', async () => {
  const order = await rejectedEdit();
  failing('remove');
  expect(await worker.decide({ order, how: 'let-go' })).toMatchObject({ ok: true });
  await worker.requestSync();
  expect(copied()).toHaveLength(1);
  fake.before = async () => {};
  await worker.requestSync();
  expect(copied()).toEqual([]);
});

it('brings no change back that was let go, though the worker was stopped between the two', async () => {
  const order = await rejectedEdit();
  const stopped = new Promise<void>((resolve) => {
    fake.before = async (deed) => {
      if (deed !== 'remove') return;
      resolve();
      await new Promise(() => {});
    };
  });
  void worker.decide({ order, how: 'let-go' });
  await stopped;
  fake.before = async () => {};
  worker = await startWorker(worker);
  await worker.requestSync();
  await worker.database.delete();
  worker = await startWorker(worker);
  expect(await worker.database.outbox.count()).toBe(0);
});

it('of one store is not sent to another unasked', async () => {
  const other = await served();
  const { fetch } = globalThis;
  vi.stubGlobal('fetch', (url: string, init: RequestInit = {}) =>
    fetch(url, { ...init, headers: { ...init.headers, origin: EXTENSION } }),
  );
  await worker.keepEdits(edits);
  await worker.database.delete();
  worker = await startWorker(worker);
  await worker.unpair();
  const address = `http://127.0.0.1:${other.port}`;
  expect(await worker.pair({ address, code: await other.code() })).toEqual({ state: 'choose' });
  vi.unstubAllGlobals();
  await other.stop();
});
