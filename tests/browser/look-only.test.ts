import { addDays } from '@platewright/core/season/dates.ts';
import { localDate } from '@platewright/core/season/local-date.ts';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { athleteFields, change, entryFields, phaseFields } from '../server/fields.ts';
import { BUILT_PAGES, type Served, served } from '../server/served.ts';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { broken } from './broken-rules.ts';
import { Dashboard, pageNames } from './pages/dashboard.ts';
import { pairByLink } from './pages/pair.ts';
import { PopupPage } from './pages/popup.ts';

const today = localDate(Date.now(), athleteFields);
const yesterday = addDays(today, -1);

let daemon: Served;
let browser: LoadedExtension;
beforeAll(async () => {
  daemon = await served({ pages: BUILT_PAGES });
  const kept = [
    change('a', 'athlete', 'ann', athleteFields),
    change('p', 'phase', 'p', phaseFields),
    change('e', 'entry', 'e', entryFields(yesterday)),
    change('f', 'entry', 'f', entryFields(today)),
    change('w', 'weigh-in', 'w', { date: yesterday, kg: 70, at: Date.now() }),
    change('t', 'tape', 't', { date: yesterday, site: 'waist', cm: 80 }),
    change('l', 'lift', 'l', { name: 'Squat', key: true, smallestStepKg: 2.5 }),
    change('s', 'lift-set', 's', { date: yesterday, lift: 'l', loadKg: 100, repetitions: 5 }),
  ];
  await daemon.store.append(kept, (one) => one);
  browser = await loadExtension();
  browser.context.setDefaultTimeout(30_000);
});
afterAll(async () => {
  await browser.close();
  await daemon.stop();
});

it('a device that may look shows each day and offers nothing to change, until it is paired to write', async () => {
  const address = `http://127.0.0.1:${daemon.port}`;
  const popup = new PopupPage(await browser.openPopup());
  const { page } = popup;
  await popup.pair(address, await daemon.code({ athlete: 'ann', access: 'read' }));
  await page.getByText('This device may look, not write.').waitFor();
  await popup.entry(1, 'Chicken').waitFor();
  await page.keyboard.press('Alt+PageUp');
  await popup.entry(1, 'Chicken').waitFor();
  await popup.beam('Protein: 46 g eaten').waitFor();
  expect(await popup.line.count()).toBe(0);
  expect(await page.getByRole('button', { name: /Move|Remove|change/ }).count()).toBe(0);
  expect(await broken(page)).toEqual([]);

  const options = await browser.openOptions();
  await options.getByText('It may look, not write.').waitFor();
  await options.getByRole('button', { name: 'Unpair' }).click();
  await popup.pair(address, await daemon.code());
  await popup.line.waitFor();
  expect(await page.getByText('This device may look, not write.').count()).toBe(0);
});

it('a dashboard that may look shows every page without a form or a button that would be refused', async () => {
  const page = await browser.context.newPage();
  const code = await daemon.code({ athlete: 'ann', access: 'read' });
  await pairByLink(page, `http://127.0.0.1:${daemon.port}/#pair=${code}`);
  await page.getByText('This device may look, not write.').waitFor();
  const dashboard = new Dashboard(page);
  for (const name of pageNames) {
    await dashboard.go(name);
    expect([name, await changes(page)]).toEqual([name, []]);
  }
});

/** What a page has to change something with; looking about, and letting the device itself go, is no change. */
async function changes(page: Page): Promise<string[]> {
  const words = await page.locator('main').locator('form, textarea, button').allInnerTexts();
  return words.filter((word) => !/^(‹|›|Show |Take the key back)/.test(word));
}
