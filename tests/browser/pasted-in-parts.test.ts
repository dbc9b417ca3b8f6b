import { addDays, datesUpTo } from '@platewright/core/season/dates.ts';
import { localDate } from '@platewright/core/season/local-date.ts';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { athleteFields, change, phaseFields } from '../server/fields.ts';
import { BUILT_PAGES, type Served, served } from '../server/served.ts';
import { launchChromium } from '../support/chromium.ts';
import { Dashboard } from './pages/dashboard.ts';
import { pairByLink } from './pages/pair.ts';

/** More than go in one request. */
const COUNT = 600;

let daemon: Served;
let browser: Browser;

beforeAll(async () => {
  daemon = await served({ pages: BUILT_PAGES });
  await daemon.store.append([change('a', 'athlete', 'ann', athleteFields)], (clock) => clock);
  await daemon.store.append([change('p', 'phase', 'p', phaseFields)], (clock) => clock);
  browser = await launchChromium();
});
afterAll(async () => {
  await browser.close();
  await daemon.stop();
});

it('pasted weigh-ins of which only some were stored are all there once the rest is sent again', async () => {
  const page = await browser.newPage();
  await pairByLink(page, `http://127.0.0.1:${daemon.port}/#pair=${await daemon.code()}`);
  await new Dashboard(page).go('Body');
  const dates = datesUpTo(addDays(localDate(Date.now(), athleteFields), -1), COUNT);
  await page
    .getByRole('textbox', { name: 'One weigh-in a line' })
    .fill(dates.map((date) => `${date}, 70.1`).join('\n'));

  let sent = 0;
  await page.route('**/v1/records', (route) => (++sent === 2 ? route.abort() : route.continue()));
  await page.getByRole('button', { name: `Take in ${COUNT} weigh-ins` }).click();
  await page.getByRole('button', { name: 'Take in 100 weigh-ins' }).click();
  await new Dashboard(page).said('Took in 100 weigh-ins.');

  const stored = await daemon.store.records({ athlete: 'ann', kind: 'weigh-in' });
  expect(new Set(stored.map(({ fields }) => fields.date))).toEqual(new Set(dates));
});
