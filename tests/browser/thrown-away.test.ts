import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Daemon, startDaemon } from '../faults/daemon-process.ts';
import { ATHLETE, entryFields } from '../server/fields.ts';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { temporaryFolder } from '../support/folder.ts';
import { broken } from './broken-rules.ts';
import { keepEdits } from './keep-edits.ts';
import { loggedChanges } from './logged-changes.ts';
import { OptionsPage } from './pages/options.ts';
import { PopupPage } from './pages/popup.ts';

const UNSENT = 12;

const folder = temporaryFolder();
const profile = join(folder.path, 'profile');
let daemon: Daemon;
let extension: LoadedExtension;

beforeAll(async () => {
  daemon = await startDaemon(folder.path);
});
afterAll(async () => {
  await extension?.close();
  await daemon.stop('SIGKILL');
  folder.remove();
});

// Chromium deletes an IndexedDB that it can't read and goes on with an empty one; a kill in mid-write is enough for that.
it('keeps what was not sent when the browser throws its database away, and fetches the rest again', async () => {
  extension = await loadExtension(undefined, profile);
  await new PopupPage(await extension.openPopup()).pair(daemon.url, daemon.code);
  const paired = new OptionsPage(await extension.openOptions());
  await keepEdits(paired.page, [entry(0)]);
  await paired.allSent();
  await daemon.stop('SIGTERM');
  for (let n = 1; n <= UNSENT; n += 1) await keepEdits(paired.page, [entry(n)]);
  await paired.waiting(UNSENT);
  await extension.close();

  damage(join(profile, 'Default/IndexedDB'));
  extension = await loadExtension(undefined, profile);
  const popup = await extension.openPopup();
  await popup.getByRole('heading', { name: 'Fetching your records' }).waitFor();
  await popup.getByText(`${UNSENT} changes wait here to be sent.`).waitFor();
  await popup.getByText('No daemon answers').waitFor();
  expect(await broken(popup)).toEqual([]);
  const options = new OptionsPage(await extension.openOptions());
  await options.waiting(UNSENT);
  await keepEdits(options.page, [entry(UNSENT + 1)]);
  await options.waiting(UNSENT + 1);

  daemon = await startDaemon(folder.path, ['start', '--port', new URL(daemon.url).port]);
  await options.page.getByRole('button', { name: 'Sync now' }).click();
  await options.allSent();
  await options.page.getByText(`${UNSENT + 2} records`).waitFor();
  const logged = await loggedChanges(daemon, folder.path);
  expect(logged.map(({ record }) => record).toSorted()).toEqual(
    Array.from({ length: UNSENT + 2 }, (_, n) => idOf(n)).toSorted(),
  );
});

it('says so on popup and options when the browser can’t open what it stored', async () => {
  await extension.context.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('Internal error opening backing store.', 'UnknownError');
    };
  });
  for (const page of [await extension.openPopup(), await extension.openOptions()]) {
    await page.getByRole('heading', { name: 'This browser can’t read what it stored' }).waitFor();
    await page.getByText('Internal error opening backing store.').waitFor();
    expect(await broken(page)).toEqual([]);
  }
});

function idOf(n: number): string {
  return `entry-${n}`;
}

function entry(n: number) {
  return { athlete: ATHLETE, kind: 'entry', record: idOf(n), fields: entryFields('2026-03-02') };
}

/** Turns a byte of each of LevelDB's lists of its files, which have checksums. */
function damage(path: string): void {
  const lists = readdirSync(path, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /MANIFEST-\d+$/.test(name),
  );
  expect(lists).not.toEqual([]);
  for (const name of lists) {
    const bytes = readFileSync(join(path, name));
    bytes[10] = (bytes[10] ?? 0) ^ 1;
    writeFileSync(join(path, name), bytes);
  }
}
