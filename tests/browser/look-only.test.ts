import { addDays } from '@platewright/core/season/dates.ts';
import { localDate } from '@platewright/core/season/local-date.ts';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { athleteFields, change, entryFields, phaseFields } from '../server/fields.ts';
import { type Served, served } from '../server/served.ts';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { broken } from './broken-rules.ts';
import { PopupPage } from './pages/popup.ts';

const today = localDate(Date.now(), athleteFields);
const yesterday = addDays(today, -1);

let daemon: Served;
let browser: LoadedExtension;
beforeAll(async () => {
  daemon = await served();
  const kept = [
    change('a', 'athlete', 'ann', athleteFields),
    change('p', 'phase', 'p', phaseFields),
    change('e', 'entry', 'e', entryFields(yesterday)),
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
  await page.getByText('Nothing is logged on this date yet.').waitFor();
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
