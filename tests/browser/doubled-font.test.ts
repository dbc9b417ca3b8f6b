import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startDaemon } from '../faults/daemon-process.ts';
import { launchChromium } from '../support/chromium.ts';
import { temporaryFolder } from '../support/folder.ts';
import { Dashboard, pageNames } from './pages/dashboard.ts';
import { pairByLink } from './pages/pair.ts';

const folder = temporaryFolder();
let daemon: Awaited<ReturnType<typeof startDaemon>>;
let browser: Browser;
let dashboard: Dashboard;
beforeAll(async () => {
  daemon = await startDaemon(folder.path, ['demo', '--port', '0']);
  // What a person sets who can't read small print; to zoom is another thing.
  browser = await launchChromium('--blink-settings=defaultFontSize=32');
  const page = await browser.newPage();
  page.setDefaultTimeout(30_000);
  await pairByLink(page, /http:\S+#pair=\S+/.exec(daemon.lines.join(' '))?.[0] ?? '');
  dashboard = new Dashboard(page);
});
afterAll(async () => {
  await browser?.close();
  await daemon?.stop('SIGTERM');
  folder.remove();
});

it.each(pageNames)('%s is no wider than its window where the browser’s font is doubled', async (name) => {
  const { page } = dashboard;
  await dashboard.go(name);
  for (const width of [1280, 640, 360]) {
    await page.setViewportSize({ width, height: 800 });
    const wider = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect([width, Math.max(0, wider)]).toEqual([width, 0]);
  }
});

it('a food’s name has room beside its figures, on a window of any width', async () => {
  const { page } = dashboard;
  await dashboard.go('Today');
  const names = page.locator('.entry > .entry-name');
  for (let width = 640; width <= 1680; width += 60) {
    await page.setViewportSize({ width, height: 800 });
    const widths = await names.evaluateAll((found) =>
      found.map((name) => name.getBoundingClientRect().width),
    );
    expect([width, Math.min(...widths) >= 100]).toEqual([width, true]);
  }
});
