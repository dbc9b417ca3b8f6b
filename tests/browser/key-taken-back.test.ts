import { afterAll, beforeAll, expect, it } from 'vitest';
import { athleteFields, change, phaseFields } from '../server/fields.ts';
import { BUILT_PAGES, type Served, served } from '../server/served.ts';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { pairByLink } from './pages/pair.ts';

let daemon: Served;
let browser: LoadedExtension;

beforeAll(async () => {
  daemon = await served({ pages: BUILT_PAGES });
  await daemon.store.append([change('a', 'athlete', 'ann', { ...athleteFields, name: 'CANARY' })], (c) => c);
  await daemon.store.append([change('p', 'phase', 'p', phaseFields)], (c) => c);
  browser = await loadExtension();
  browser.context.setDefaultTimeout(30_000);
});
afterAll(async () => {
  await browser.close();
  await daemon.stop();
});

it('an open dashboard asks to pair as soon as its key is taken back, and has stored nothing', async () => {
  const page = await browser.context.newPage();
  const url = `http://127.0.0.1:${daemon.port}`;
  await pairByLink(page, `${url}/#pair=${await daemon.code()}`);
  await page.getByRole('navigation', { name: 'Pages' }).waitFor();
  await page.goto(`${url}/#/roster`);
  await page.getByText('CANARY').first().waitFor();
  const stored = () =>
    page.evaluate(async () => ({
      kept: [localStorage.length, sessionStorage.length, (await indexedDB.databases()).length],
      caches: await caches.keys(),
    }));
  expect(await stored()).toEqual({ kept: [0, 0, 0], caches: [] });

  const [device] = await daemon.store.devices();
  // As another device would, by the daemon, so that the open stream ends.
  const code = await daemon.code();
  const fromPage = { origin: url, 'sec-fetch-site': 'same-origin' };
  const phone = await fetch(`${url}/v1/pair`, {
    method: 'POST',
    headers: { ...fromPage, 'content-type': 'application/json' },
    body: JSON.stringify({ code, name: 'Phone', kind: 'dashboard' }),
  });
  const cookie = phone.headers.get('set-cookie')?.split(';')[0] ?? '';
  const gone = await fetch(`${url}/v1/devices/${device?.id}`, {
    method: 'DELETE',
    headers: { ...fromPage, cookie },
  });
  expect(gone.status).toBe(204);

  await page.getByRole('heading', { name: 'Pair this browser' }).waitFor();
  expect(await page.content()).not.toContain('CANARY');
  expect(await stored()).toEqual({ kept: [0, 0, 0], caches: [] });
  await page.goBack();
  await page.getByRole('heading', { name: 'Pair this browser' }).waitFor();
  await page.reload();
  await page.getByRole('heading', { name: 'Pair this browser' }).waitFor();
  expect(await page.content()).not.toContain('CANARY');
});
