import { readlinkSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { seededChance } from '../../fixtures/season/chance.ts';
import { type Daemon, startDaemon } from '../faults/daemon-process.ts';
import { ATHLETE, entryFields } from '../server/fields.ts';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { temporaryFolder } from '../support/folder.ts';
import { loggedChanges } from './logged-changes.ts';
import { PopupPage } from './pages/popup.ts';

const STOPS = 100;
const KILLS = 25;
/** Saves that are under way at a kill, or were just before. */
const MOST_SAVES = 40;
/** After that long without an answer nobody was told that something is saved. */
const UNANSWERED_MS = 5000;

const folder = temporaryFolder();
const profile = join(folder.path, 'profile');
const { uniform } = seededChance(11);
/** Entries of which the person was told that they are saved. */
const saved = new Set<string>();
let daemon: Daemon;
let entries = 0;

beforeAll(async () => {
  daemon = await startDaemon(folder.path);
  const extension = await open();
  await new PopupPage(await extension.openPopup()).pair(daemon.url, daemon.code);
  await extension.close();
});
afterAll(async () => {
  await daemon.stop('SIGKILL');
  folder.remove();
});

it(`nothing that was saved is lost when the worker is stopped ${STOPS} times and Chromium killed ${KILLS} times`, async () => {
  await stopWorkers();
  await daemon.stop('SIGTERM');
  for (let kill = 0; kill < KILLS; kill += 1) await killInMidSave();
  daemon = await startDaemon(folder.path, ['start', '--port', new URL(daemon.url).port]);
  await sendAll();
  const logged = await loggedChanges(daemon, folder.path);
  const stored = new Set(logged.map(({ record }) => record));
  const ids = logged.map(({ id }) => id);
  expect(saved.size).toBeGreaterThan(STOPS / 4 + KILLS);
  expect([...saved].filter((id) => !stored.has(id))).toEqual([]);
  expect(new Set(ids).size).toBe(ids.length);
}, 300_000);

/** Stops the worker again and again while a page saves entry after entry and the worker sends them on. */
async function stopWorkers(): Promise<void> {
  const extension = await open();
  const page = await extension.openOptions();
  const devtools = await extension.context.newCDPSession(page);
  await devtools.send('ServiceWorker.enable');
  for (let stop = 0; stop < STOPS; stop += 1) {
    const id = newId();
    const saving = save(page, id);
    await sleep(uniform() * 12);
    await devtools.send('ServiceWorker.stopAllWorkers');
    // A message to a worker that is stopped before it starts is sometimes never answered.
    if (await Promise.race([saving, sleep(UNANSWERED_MS, false)])) saved.add(id);
  }
  await extension.close();
}

/** Kills Chromium with all its processes while a page saves entry after entry. */
async function killInMidSave(): Promise<void> {
  const extension = await open();
  const page = await extension.openOptions();
  const gone = new Promise((resolve) => extension.context.once('close', resolve));
  const first = Promise.withResolvers<void>();
  await page.exposeFunction('noteSaved', (id: string) => {
    saved.add(id);
    first.resolve();
  });
  const ids = Array.from({ length: MOST_SAVES }, newId);
  const saving = page.evaluate(saveAll, { ids, athlete: ATHLETE, fields: entryFields('2026-03-02') });
  saving.catch(() => undefined);
  await Promise.race([first.promise, sleep(UNANSWERED_MS)]);
  await sleep(uniform() * 100);
  const pid = Number(/\d+$/.exec(readlinkSync(join(profile, 'SingletonLock')))?.[0]);
  process.kill(-pid, 'SIGKILL');
  await gone;
}

/** Opens the browser and has it send what waits. */
async function sendAll(): Promise<void> {
  const extension = await open();
  const page = await extension.openOptions();
  try {
    await page.getByRole('button', { name: 'Sync now' }).click();
    await page.getByText('None: all that was logged here is with the daemon.').waitFor();
  } catch (error) {
    const shown = await page.locator('body').textContent();
    throw new Error(`What was saved is not sent. The options page shows: ${shown}`, { cause: error });
  } finally {
    await extension.close();
  }
}

function open(): Promise<LoadedExtension> {
  return loadExtension(undefined, profile);
}

function newId(): string {
  entries += 1;
  return `entry-${entries}`;
}

/** Asks for one save as the popup does. True when the answer said that it is kept; false when nothing was said. */
async function save(page: Page, id: string): Promise<boolean> {
  const ids = await page.evaluate(saveAll, {
    ids: [id],
    athlete: ATHLETE,
    fields: entryFields('2026-03-02'),
  });
  return ids.includes(id);
}

/** Runs in the page. */
async function saveAll({ ids, athlete, fields }: { ids: string[]; athlete: string; fields: object }) {
  const told: string[] = [];
  for (const id of ids) {
    const ask = [{ athlete, kind: 'entry', record: id, fields }];
    const answer = await Reflect.get(globalThis, 'chrome')
      .runtime.sendMessage({ name: 'edit', ask })
      .catch(() => null);
    if (answer?.ok !== true) continue;
    told.push(id);
    await Reflect.get(globalThis, 'noteSaved')?.(id);
  }
  return told;
}
