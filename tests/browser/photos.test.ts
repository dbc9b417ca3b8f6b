import { addDays } from '@platewright/core/season/dates.ts';
import { formatDay, formatDayOfYear } from '@platewright/core/ui/format-date.ts';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { athleteFields, change, phaseFields } from '../server/fields.ts';
import { BUILT_PAGES, type Served, served } from '../server/served.ts';
import { launchChromium } from '../support/chromium.ts';
import { brokenAtEachWidth } from './broken-rules.ts';
import { Dashboard } from './pages/dashboard.ts';
import { pairByLink } from './pages/pair.ts';

let daemon: Served;
let browser: Browser;
let dashboard: Dashboard;
let photos: Locator;

beforeAll(async () => {
  daemon = await served({ pages: BUILT_PAGES });
  await daemon.store.append([change('a', 'athlete', 'ann', athleteFields)], (clock) => clock);
  await daemon.store.append([change('p', 'phase', 'p', phaseFields)], (clock) => clock);
  browser = await launchChromium();
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  page.setDefaultTimeout(30_000);
  await pairByLink(page, `http://127.0.0.1:${daemon.port}/#pair=${await daemon.code()}`);
  dashboard = new Dashboard(page);
  await dashboard.go('Body');
  photos = dashboard.section('Photos');
});
afterAll(async () => {
  await browser.close();
  await daemon.stop();
});

/** What a camera writes: a JPEG lying on its side, with where it was taken. */
async function fromCamera(page: Page, colour: string): Promise<Buffer> {
  const plain = await page.evaluate(`(async () => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 2400, height: 1800 });
    const context = canvas.getContext('2d');
    context.fillStyle = ${JSON.stringify(colour)};
    context.fillRect(0, 0, 2400, 1800);
    const blob = await new Promise((done) => canvas.toBlob(done, 'image/jpeg'));
    return Array.from(new Uint8Array(await blob.arrayBuffer()));
  })()`);
  const content = Buffer.from(Array.isArray(plain) ? plain : []);
  const place = 'GPS-CANARY 48.2N 16.3E\0';
  const directory = Buffer.alloc(8 + 2 + 2 * 12 + 4);
  directory.write('MM\0*\0\0\0\u0008\0\u0002', 'latin1');
  // Tag, type, count, value: orientation 6 says that the top is at the right.
  directory.writeUInt16BE(0x0112, 10);
  directory.writeUInt16BE(3, 12);
  directory.writeUInt32BE(1, 14);
  directory.writeUInt16BE(6, 18);
  directory.writeUInt16BE(0x010e, 22);
  directory.writeUInt16BE(2, 24);
  directory.writeUInt32BE(place.length, 26);
  directory.writeUInt32BE(directory.length, 30);
  const exif = Buffer.concat([Buffer.from('Exif\0\0'), directory, Buffer.from(place)]);
  const marker = Buffer.from([0xff, 0xe1, 0, exif.length + 2]);
  return Buffer.concat([content.subarray(0, 2), marker, exif, content.subarray(2)]);
}

async function add(buffer: Buffer, date: string, note = ''): Promise<void> {
  await photos
    .getByLabel('Photo', { exact: true })
    .setInputFiles({ name: 'p', mimeType: 'image/jpeg', buffer });
  await photos.getByLabel('Date').fill(date);
  await photos.getByLabel('Note').fill(note);
  await photos.getByRole('button', { name: 'Add the photo' }).click();
}

const today = new Date().toISOString().slice(0, 10);
const [before, newest] = [addDays(today, -60), addDays(today, -1)];
const shown = (date: string, note = '') =>
  photos.getByRole('img', { name: [formatDayOfYear(date), note].filter(Boolean).join(', '), exact: true });

/** Width and height of a picture as it came; 0 until then. */
function sizeOf(picture: Locator): Promise<number[]> {
  return picture.evaluate((image) =>
    image instanceof HTMLImageElement ? [image.naturalWidth, image.naturalHeight] : [],
  );
}

describe('photos on the Body page', () => {
  it('are drawn anew before they are sent: upright, smaller, and without place', async () => {
    await photos.getByText('Two of them stand here beside each other.').waitFor();
    const camera = await fromCamera(dashboard.page, 'seagreen');
    expect(camera.includes('GPS-CANARY')).toBe(true);
    await add(camera, before, 'front');
    await dashboard.said(`Added the photo of ${formatDay(before)}.`);
    const image = shown(before, 'front');
    await expect.poll(() => sizeOf(image)).toEqual([1200, 1600]);
    const asked = dashboard.page.waitForResponse(/\/v1\/photos\//);
    await dashboard.page.reload();
    const answer = await asked;
    const stored = await answer.body();
    expect(stored.subarray(0, 3)).toEqual(Buffer.from([0xff, 0xd8, 0xff]));
    expect(stored.includes('GPS-CANARY')).toBe(false);
    expect(stored.includes('Exif')).toBe(false);
    expect(answer.headers()['content-security-policy']).toMatch(/^default-src 'none';.* sandbox$/);
    expect(answer.headers()['content-type']).toBe('image/jpeg');
  });

  it('stand beside each other, the first and the newest unless others are chosen', async () => {
    await add(await fromCamera(dashboard.page, 'tan'), newest);
    await dashboard.said(`Added the photo of ${formatDay(newest)}.`);
    await add(await fromCamera(dashboard.page, 'olive'), addDays(before, 20), 'side');
    await dashboard.said(`Added the photo of ${formatDay(addDays(before, 20))}.`);
    await shown(before, 'front').waitFor();
    await shown(newest).waitFor();
    expect(await photos.getByRole('img').count()).toBe(2);
    expect(await brokenAtEachWidth(dashboard.page)).toEqual([]);
    await photos
      .getByLabel('Right photo')
      .selectOption({ label: `${formatDayOfYear(addDays(before, 20))}, side` });
    await shown(addDays(before, 20), 'side').waitFor();
    expect(await shown(newest).count()).toBe(0);
  });

  it('are removed, and come back with Undo', async () => {
    const side = shown(addDays(before, 20), 'side');
    await photos
      .getByRole('button', { name: `Remove the photo of ${formatDay(addDays(before, 20))}` })
      .click();
    await side.waitFor({ state: 'detached' });
    await shown(newest).waitFor();
    await dashboard.undo();
    await side.waitFor();
    await expect.poll(() => sizeOf(side)).toEqual([1200, 1600]);
  });

  it('are pictures: another file is refused with what to choose', async () => {
    await add(Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'), newest);
    await photos.getByRole('alert').getByText('Choose a JPEG, PNG or WebP.').waitFor();
    expect(await daemon.store.records({ kind: 'photo' })).toHaveLength(3);
  });
});
