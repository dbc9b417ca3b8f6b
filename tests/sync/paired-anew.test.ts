import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { keepEdits } from '../../extension/worker/edits.ts';
import { erase, pair, unpair } from '../../extension/worker/pair.ts';
import { database, replica } from '../../extension/worker/replica.ts';
import { requestSync } from '../../extension/worker/run-sync.ts';
import { ATHLETE, change, entryFields } from '../server/fields.ts';
import { type Served, served } from '../server/served.ts';
import { EXTENSION } from '../support/extension-origin.ts';
import { logOf } from '../support/log.ts';
import { type FakeBrowser, giveLocksLater } from './fake-browser.ts';

const fake = await vi.hoisted(async () => new (await import('./fake-browser.ts')).FakeBrowser());
vi.mock('wxt/browser', (): { browser: FakeBrowser } => ({ browser: fake }));

giveLocksLater();

let first: Served;
let second: Served;
/** Which answers of `first` are held back once they came; those to pulls, mostly. */
let holds: (request: string) => boolean;
let release: () => void;
let held: Promise<void>;

beforeEach(async () => {
  [first, second] = [await served(), await served()];
  await first.store.append([change('a', 'entry', 'of-first', entryFields('2026-03-02'))], (clock) => clock);
  await second.store.append([change('b', 'entry', 'of-second', entryFields('2026-03-02'))], (clock) => clock);
  const released = Promise.withResolvers<void>();
  const came = Promise.withResolvers<void>();
  [release, held] = [released.resolve, came.promise];
  holds = (request) => request.startsWith('GET /v1/pull');
  const { fetch } = globalThis;
  vi.stubGlobal('fetch', async (url: string, init: RequestInit = {}) => {
    const answer = await fetch(url, { ...init, headers: { ...init.headers, origin: EXTENSION } });
    const [before, path] = url.split(addressOf(first));
    if (before !== '' || !holds(`${init.method ?? 'GET'} ${path}`)) return answer;
    came.resolve();
    await released.promise;
    return answer;
  });
});
afterEach(async () => {
  release();
  fake.items.clear();
  fake.before = async () => {};
  // Behind whatever still runs.
  await requestSync();
  vi.unstubAllGlobals();
  await Promise.all([database.records, database.outbox, database.meta].map((table) => table.clear()));
  await Promise.all([first.stop(), second.stop()]);
});

const addressOf = ({ port }: Served) => `http://127.0.0.1:${port}`;
const pairWith = async (daemon: Served) =>
  await pair({ address: addressOf(daemon), code: await daemon.code() });
const heldHere = async () => (await database.records.toArray()).map(({ id }) => id);
const heldBy = async ({ store }: Served) => (await store.records({ kind: 'entry' })).map(({ id }) => id);
const killedBefore = (deed: 'get' | 'set' | 'remove', item: string | null) =>
  new Promise<void>((resolve) => {
    fake.before = async (asked, keys) => {
      if (asked !== deed || (keys?.[0] ?? null) !== item) return;
      resolve();
      await new Promise(() => {});
    };
  });
const device = async () => (await replica.look((tx) => tx.head())).device;

it('writes nothing of the first pull of one pairing into the replica of the next', async () => {
  const pairing = pairWith(first);
  await held;
  await unpair();
  const next = pairWith(second);
  await vi.waitFor(async () => expect(await device()).not.toBeNull(), 30_000);
  release();
  expect([await pairing, await next]).toEqual([{ state: 'paired' }, { state: 'paired' }]);
  expect(await heldHere()).toEqual(['of-second']);
  expect(await heldBy(second)).toEqual(['of-second']);
});

it('goes on with the same store, and sends what was logged between once', async () => {
  const pairing = pairWith(first);
  await held;
  const { fields } = change('c', 'entry', 'logged', entryFields('2026-03-02'));
  await keepEdits([{ athlete: ATHLETE, kind: 'entry', record: 'logged', fields }]);
  await unpair();
  const next = pairWith(first);
  await vi.waitFor(async () => expect(await device()).not.toBeNull(), 30_000);
  release();
  await Promise.all([pairing, next]);
  await requestSync();
  expect((await heldHere()).toSorted()).toEqual(['logged', 'of-first']);
  expect(await database.outbox.count()).toBe(0);
  expect((await logOf(first.store)).map(({ record }) => record)).toEqual(['of-first', 'logged']);
});

it('writes nothing of a pull under way into a browser that was erased meanwhile', async () => {
  const pairing = pairWith(first);
  await held;
  await unpair();
  await erase();
  release();
  await pairing;
  expect(await heldHere()).toEqual([]);
  expect((await replica.look((tx) => tx.head())).store).toBeNull();
});

it('writes no names of athletes into a browser that was erased while the daemon was asked for them', async () => {
  let asked = 0;
  holds = (request) => {
    if (request === 'GET /v1/session') asked += 1;
    // The first time it is asked to pair, then to show what it says.
    return request === 'GET /v1/session' && asked === 2;
  };
  const pairing = pairWith(first);
  await held;
  await unpair();
  await erase();
  release();
  await pairing;
  expect((await database.meta.toArray()).map(({ name }) => name)).toEqual(['head']);
});

it('stays paired anew, however late the daemon before says that it has forgotten this browser', async () => {
  holds = (request) => request.startsWith('DELETE');
  await pairWith(first);
  const ending = unpair();
  await held;
  expect(await pairWith(second)).toEqual({ state: 'choose' });
  release();
  await ending;
  expect(fake.items.get('pairing')).toMatchObject({ address: addressOf(second) });
});

it('reads nothing where a kill came before the browser stamps as the device that it was paired as', async () => {
  release();
  await pairWith(first);
  await unpair();
  await erase();
  const pairing = {
    address: addressOf(first),
    token: 't',
    device: 'd0',
    store: first.store.id,
    joined: true,
  };
  fake.items.set('pairing', pairing);
  await requestSync();
  expect((await database.meta.toArray()).map(({ name }) => name)).toEqual(['head']);
});

it('sends nothing of one store to another, though both are paired with at once', async () => {
  const pairing = pairWith(first);
  await held;
  fake.before = async (deed, keys) => {
    // Whose records are here was looked for, and now those of the first come in.
    if (deed !== 'set' || !keys?.includes('pairing')) return;
    release();
    await navigator.locks.request('sync', async () => {});
  };
  await Promise.all([pairing, pairWith(second)]);
  await requestSync();
  expect(await heldBy(second)).toEqual(['of-second']);
});

it('sends an invented season to no store, though it is killed while that gives way', async () => {
  await first.store.putSetting('demo', '2026-03-02');
  release();
  await pairWith(first);
  expect(await heldHere()).toEqual(['of-first']);
  // Here it begins to empty what it holds.
  const killed = killedBefore('get', null);
  void pairWith(second);
  await killed;
  fake.before = async () => {};
  await requestSync();
  expect(await heldBy(second)).toEqual(['of-second']);
});

it('asks nothing that it could not do, where it is killed before the pairing is kept', async () => {
  release();
  await pairWith(first);
  await unpair();
  const killed = killedBefore('set', 'pairing');
  void pairWith(second);
  await killed;
  expect(await database.meta.get('choice')).toBeUndefined();
});

it('takes no edits as paired, where it is killed before the pairing is forgotten', async () => {
  release();
  await pairWith(first);
  const killed = killedBefore('remove', 'pairing');
  void unpair();
  await killed;
  expect(await device()).toBeNull();
});
