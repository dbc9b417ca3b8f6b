import { createServer } from 'node:http';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { BUILT_PAGES, type Served, served } from '../server/served.ts';
import { launchChromium } from '../support/chromium.ts';
import { listen } from '../support/port.ts';

let daemon: Served;
let browser: Browser;
const hostile = createServer((_request, response) => {
  response.writeHead(200, { 'content-type': 'text/html' }).end('<!doctype html><body>hostile');
});
let hostilePort: number;

beforeAll(async () => {
  daemon = await served({ pages: BUILT_PAGES });
  browser = await launchChromium();
  hostilePort = await listen(hostile);
});
afterAll(async () => {
  await browser.close();
  hostile.close();
  await daemon.stop();
});

const link = (code: string) => `http://127.0.0.1:${daemon.port}/#pair=${code}`;

/** What another site’s page makes of the dashboard in a window of its own, once it has come to rest. */
async function openedBy(page: Page, code: string): Promise<Page> {
  const opening = page.waitForEvent('popup');
  await page.evaluate(`void open(${JSON.stringify(link(code))})`);
  const opened = await opening;
  await opened.getByRole('heading', { name: 'Pair this browser' }).waitFor();
  await opened.waitForLoadState('networkidle');
  return opened;
}

it('a code in a link is shown and waits for a press, so that a foreign page can neither burn codes nor pair', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(`http://127.0.0.1:${hostilePort}/`);
  const asked: string[] = [];
  context.on('request', (request) => {
    if (request.method() !== 'GET') asked.push(request.url());
  });
  const good = await daemon.code();
  for (let i = 0; i < 6; i++) await (await openedBy(page, `0000-000${i}`)).close();
  const opened = await openedBy(page, good);
  expect(asked).toEqual([]);
  expect(await daemon.store.devices()).toEqual([]);
  expect(opened.url()).not.toContain(good);

  const form = opened.locator('form');
  expect(await form.getByLabel('Pairing code').inputValue()).toBe(good);
  expect(await form.textContent()).toContain(`127.0.0.1:${daemon.port}`);
  await form.getByRole('button', { name: 'Pair this browser' }).click();
  await opened.locator('.set-up').waitFor();
  expect(await daemon.store.devices()).toHaveLength(1);
  await context.close();
});

it('a link pasted into a tab that shows the dashboard already offers its code', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(`http://127.0.0.1:${daemon.port}/`);
  const field = page.getByLabel('Pairing code');
  await field.fill('0000-0000');
  for (const code of [await daemon.code(), await daemon.code()]) {
    await page.goto(link(code));
    await expect.poll(() => field.inputValue()).toBe(code);
    expect(page.url()).not.toContain(code);
  }
  await page.getByRole('button', { name: 'Pair this browser' }).click();
  await page.locator('.set-up').waitFor();

  // Its key was taken back while the tab stood open.
  for (const device of await daemon.store.devices()) {
    await daemon.store.putDevice({ ...device, revokedAt: Date.now() });
  }
  const code = await daemon.code();
  await page.goto(link(code));
  await expect.poll(() => field.inputValue()).toBe(code);
  await context.close();
});

it('what has not the form of a code is not sent, which would use up a try', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  const asked: string[] = [];
  page.on('request', (request) => {
    if (request.method() !== 'GET') asked.push(request.url());
  });
  await page.goto(`http://127.0.0.1:${daemon.port}/`);
  await page.getByLabel('Pairing code').fill('hello');
  await page.getByRole('button', { name: 'Pair this browser' }).click();
  await page.getByText('A pairing code is eight letters and digits').waitFor();
  expect(asked).toEqual([]);
  await context.close();
});
