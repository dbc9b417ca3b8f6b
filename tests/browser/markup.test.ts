import { type Kind, kinds } from '@platewright/core/records/kinds.ts';
import { type Page, request } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { athleteFields, entryFields, phaseFields } from '../server/fields.ts';
import { BUILT_PAGES, type Served, served } from '../server/served.ts';
import { type LoadedExtension, loadExtension } from '../support/extension.ts';
import { pairByLink } from './pages/pair.ts';
import { PopupPage } from './pages/popup.ts';

/** Runs in any place where text is taken for markup, script, style, address or attribute. */
const MARKUP = `"'><img src=x onerror=owned()><svg onload=owned()><script>owned()</script><a href="javascript:owned()">x`;
/** The same for fields that are short. */
const SHORT = '<img src=x onerror=owned()>';

const today = new Date().toISOString().slice(0, 10);

/** A record of each kind that shows text, with markup in every field that takes any. */
const records: readonly { kind: Kind; id: string; fields: object }[] = [
  { kind: 'athlete', id: 'ann', fields: { ...athleteFields, name: MARKUP } },
  { kind: 'phase', id: 'p', fields: phaseFields },
  {
    kind: 'food',
    id: 'food',
    fields: {
      ...{ name: MARKUP, aliases: [SHORT], state: 'raw', carbohydrate: 'quick' },
      per100: { energyKcal: 100, proteinG: 20, carbohydrateG: 2, fatG: 1 },
      portions: [{ name: SHORT, grams: 50 }],
    },
  },
  { kind: 'standing-meal', id: 'meal', fields: { name: MARKUP, items: [{ food: 'food', grams: 100 }] } },
  {
    kind: 'entry',
    id: 'e',
    fields: { ...entryFields(today), name: MARKUP, food: 'food', amount: SHORT, at: Date.now() },
  },
  { kind: 'day', id: `day-${today}`, fields: { date: today, note: MARKUP } },
  { kind: 'weigh-in', id: 'w', fields: { date: today, kg: 70, at: Date.now(), note: MARKUP } },
  {
    kind: 'photo',
    id: 'photo',
    fields: { date: today, sha256: 'a'.repeat(64), mediaType: 'image/png', note: MARKUP },
  },
  { kind: 'lift', id: 'lift', fields: { name: MARKUP, key: true, smallestStepKg: 2.5 } },
  { kind: 'lift-set', id: 'set', fields: { date: today, lift: 'lift', loadKg: 100, repetitions: 5 } },
  {
    kind: 'weekly-call',
    id: 'call-2026-01-10',
    fields: {
      ...{
        date: '2026-01-10',
        verdict: 'up',
        decision: 'accepted',
        proposedG: 300,
        markG: 300,
        bodyMassKg: 70,
      },
      ...{ summary: MARKUP, at: 1 },
    },
  },
  { kind: 'athlete', id: 'bob', fields: { ...athleteFields, name: `${MARKUP}2`, timeZone: SHORT } },
];

let daemon: Served;
let extension: LoadedExtension;
let page: Page;
const complaints: string[] = [];

/** Hears of every script that ran where text should stand, and of every one that the page's policy had to stop. */
async function watch(opened: Page): Promise<void> {
  opened.on('dialog', (dialog) => void dialog.dismiss());
  opened.on('console', (message) => {
    if (/Content Security Policy|owned/i.test(message.text())) complaints.push(message.text());
  });
  opened.on('pageerror', (error) => complaints.push(error.message));
  await opened.exposeFunction('owned', () => complaints.push('a script ran'));
}

/** Looks at what stands on a page: the markup as text, and none of it as elements. */
async function inert(opened: Page, where: string): Promise<void> {
  await opened.waitForTimeout(100);
  const elements = opened.locator(
    'img[src="x"], svg[onload], [onerror], a[href^="javascript:"], body script',
  );
  const found = await elements.evaluateAll((nodes) => nodes.map((node) => node.outerHTML));
  // The one script in the body of a page is its own.
  expect([where, found.filter((html) => /owned/.test(html))]).toEqual([where, []]);
  expect([where, complaints]).toEqual([where, []]);
}

beforeAll(async () => {
  daemon = await served({ pages: BUILT_PAGES });
  extension = await loadExtension();
  extension.context.setDefaultTimeout(30_000);
  page = await extension.context.newPage();
  await watch(page);
  const url = `http://127.0.0.1:${daemon.port}`;
  await pairByLink(page, `${url}/#pair=${await daemon.code()}`);
  await page.locator('.set-up').waitFor();
  const edits = records.map((record) => ({ ...record, athlete: record.id === 'bob' ? 'bob' : 'ann' }));
  const stored = await page.evaluate(async (body) => {
    const headers = { 'content-type': 'application/json' };
    return await (await fetch('v1/records', { method: 'POST', headers, body })).text();
  }, JSON.stringify({ edits }));
  expect(stored).toContain('"seq"');
  const paired = {
    code: await daemon.code({ athlete: 'ann', access: 'read' }),
    name: MARKUP,
    kind: 'dashboard',
  };
  const headers = { origin: url, 'sec-fetch-site': 'same-origin' };
  // With cookies of its own, so that the page stays an owner's and shows its forms.
  const other = await request.newContext();
  expect((await other.post(`${url}/v1/pair`, { headers, data: paired })).ok()).toBe(true);
  await other.dispose();
  await page.reload();
}, 120_000);

afterAll(async () => {
  await extension.close();
  await daemon.stop();
});

it('has markup in every text field of every kind of record', () => {
  const filled = JSON.stringify(records.map(({ kind, fields }) => [kind, fields]));
  for (const [kind, schema] of Object.entries(kinds)) {
    for (const [field, part] of Object.entries(schema.shape)) {
      if (!part.safeParse(SHORT).success) continue;
      const has = records.some(
        (record) => record.kind === kind && /owned/.test(String(Reflect.get(record.fields, field))),
      );
      expect([kind, field, has]).toEqual([kind, field, true]);
    }
  }
  expect(filled.split('owned').length).toBeGreaterThan(20);
});

/** Pages that show the words of records, not figures alone. */
const SHOWS = ['today', 'larder', 'plan', 'roster', 'devices'];

it.each(['today', 'larder', 'body', 'week', 'plan', 'roster', 'devices'])(
  'the dashboard’s %s shows it as text',
  async (name) => {
    await page.goto(`http://127.0.0.1:${daemon.port}/#/${name}`);
    await page.locator('main h1').waitFor();
    await page.getByText('Reading…').first().waitFor({ state: 'detached' });
    await inert(page, name);
    if (SHOWS.includes(name)) expect(await page.locator('main').textContent()).toContain('<img src=x');
  },
);

it('the dashboard’s forms show it as text', async () => {
  await page.goto(`http://127.0.0.1:${daemon.port}/#/plan`);
  await page.getByRole('button', { name: 'Change the set-up' }).click();
  await inert(page, 'the set-up form');
  await page.goto(`http://127.0.0.1:${daemon.port}/#/today`);
  await page.locator('main input:not([type])').first().fill(SHORT);
  await inert(page, 'a typed line');
});

it('popup and options show it as text', async () => {
  const popup = new PopupPage(await extension.openPopup());
  await watch(popup.page);
  await popup.pair(`http://127.0.0.1:${daemon.port}`, await daemon.code());
  await popup.line.waitFor();
  await inert(popup.page, 'popup');
  await popup.line.pressSequentially('img');
  await popup.options.first().waitFor();
  await inert(popup.page, 'foods in the popup');
  await popup.line.fill(SHORT);
  await inert(popup.page, 'a typed line in the popup');
  const options = await extension.openOptions();
  await watch(options);
  await options.reload();
  await options.getByRole('heading').first().waitFor();
  await inert(options, 'options');
});
