import type { Change } from '@platewright/core/changes/change.ts';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DATABASE } from '../../extension/replica/reader.ts';
import { athleteFields, change, entryFields, phaseFields } from '../server/fields.ts';
import { type Served, served } from '../server/served.ts';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { broken } from './broken-rules.ts';
import { keepEdits } from './keep-edits.ts';
import { killWorker } from './kill-worker.ts';
import { OptionsPage } from './pages/options.ts';

let first: Served;
let second: Served;
let third: Served;
let invented: Served;
let browser: LoadedExtension;
let options: OptionsPage;

beforeAll(async () => {
  first = await storeOf('ann');
  second = await storeOf('bea');
  third = await storeOf('cleo');
  invented = await storeOf('dana');
  await invented.store.putSetting('demo', '2026-03-02');
  browser = await loadExtension();
  browser.context.setDefaultTimeout(30_000);
  options = new OptionsPage(await browser.openOptions());
});
afterAll(async () => {
  await browser.close();
  await second.stop();
  await invented.stop();
});

async function storeOf(athlete: string): Promise<Served> {
  const daemon = await served();
  const kept: Change[] = [
    { ...change('a', 'athlete', athlete, { ...athleteFields, name: athlete }), athlete },
    { ...change('p', 'phase', 'p', phaseFields), athlete },
  ];
  await daemon.store.append(kept, (one) => one);
  return daemon;
}

async function pair(daemon: Served, rights?: Parameters<Served['code']>[0]): Promise<void> {
  const code = await daemon.code(rights);
  await options.page.getByLabel('Pairing code').fill(`http://127.0.0.1:${daemon.port} ${code}`);
  await options.page.keyboard.press('Enter');
}

function entry(record: string) {
  return { athlete: 'ann', kind: 'entry', record, fields: { ...entryFields('2026-03-02') } };
}

/** The choice that is asked for, by the words that say what waits. */
async function asked(waits: string): Promise<void> {
  await options.page.getByText(`records of another store, ${waits}`).waitFor();
}

/** What a store holds of an athlete, but for the starter larder, which a daemon gives to each. */
async function heldBy(daemon: Served, athlete: string): Promise<string[]> {
  const records = await daemon.store.records({ athlete });
  return records.filter(({ kind }) => kind !== 'food').map(({ id }) => id);
}

const press = (page: Page, name: string) => page.getByRole('button', { name }).click();

describe('records of one store, when the browser meets another', () => {
  it('are kept when the person says so, or may only look there', async () => {
    await pair(first);
    await options.page.getByText('Paired with the daemon').waitFor();
    await keepEdits(options.page, [entry('sent')]);
    await options.allSent();
    await first.stop();
    await keepEdits(options.page, [entry('unsent')]);
    await options.page.getByText('1 change waits to be sent.').waitFor();
    await press(options.page, 'Unpair');

    await pair(second, { athlete: null, access: 'read' });
    await asked('with 1 change that no daemon has');
    expect(await options.page.getByRole('button', { name: 'Send them to this store' }).count()).toBe(0);
    expect(await broken(options.page)).toEqual([]);
    await press(options.page, 'Keep them, unpair again');
    await options.page.getByText('1 change waits to be sent.').waitFor();
    expect(await heldBy(second, 'ann')).toEqual([]);
  });

  it('are no invented ones though a look at an invented season came between', async () => {
    await pair(invented);
    await asked('with 1 change that no daemon has');
    await press(options.page, 'Keep them, unpair again');
    await options.page.getByText('1 change waits to be sent.').waitFor();
    await pair(third);
    await asked('with 1 change that no daemon has');
    await press(options.page, 'Keep them, unpair again');
    await options.page.getByText('1 change waits to be sent.').waitFor();
  });

  it('are sent there when the person says so, with those that no daemon had', async () => {
    await pair(second);
    await asked('with 1 change that no daemon has');
    await press(options.page, 'Send them to this store');
    await options.allSent();
    expect(await heldBy(second, 'ann')).toEqual(['ann', 'p', 'sent', 'unsent']);
    await options.page.getByRole('radio', { name: 'ann' }).waitFor();
    await options.page.getByRole('radio', { name: 'bea' }).waitFor();
    const popup = await browser.openPopup();
    await popup.locator('.date-kind').getByText('ann').waitFor();
    await popup.close();
  });

  it('are erased here, and nowhere else, when the person says so', async () => {
    await press(options.page, 'Unpair');
    await pair(third);
    await press(options.page, 'Erase them here, show this store');
    await options.page.getByText('2 records').waitFor();
    await options.allSent();
    expect(await heldBy(third, 'cleo')).toEqual(['cleo', 'p']);
    expect(await heldBy(third, 'ann')).toEqual([]);
    expect(await heldBy(second, 'ann')).toEqual(['ann', 'p', 'sent', 'unsent']);
  });

  it('are another store’s still when the browser threw them away while it was unpaired', async () => {
    await third.stop();
    await keepEdits(options.page, [{ ...entry('late'), athlete: 'cleo' }]);
    await press(options.page, 'Unpair');
    await options.page.getByLabel('Pairing code').waitFor();
    await throwAway(options.page);
    await options.page.getByText('1 change waits to be sent.').waitFor();
    await pair(second);
    await asked('with 1 change that no daemon has');
    await press(options.page, 'Keep them, unpair again');
    await options.page.getByText('1 change waits to be sent.').waitFor();
    expect(await heldBy(second, 'cleo')).toEqual([]);
  });
});

/** Has the browser delete the database, as when it can't read it, and starts the worker and the page anew. */
async function throwAway(page: Page): Promise<void> {
  await killWorker(page);
  await page.evaluate(
    (name) =>
      new Promise((resolve) => {
        indexedDB.deleteDatabase(name).onsuccess = resolve;
      }),
    DATABASE,
  );
  await page.reload();
  await page.evaluate(() =>
    Reflect.get(globalThis, 'chrome').runtime.sendMessage({ name: 'sync', ask: null }),
  );
}
