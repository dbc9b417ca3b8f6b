import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Dashboard } from './pages/dashboard.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let page: Page;
let dashboard: Dashboard;
beforeAll(async () => {
  world = await startWorld('demo');
  page = await world.openDashboard();
  dashboard = new Dashboard(page);
  await page.emulateMedia({ forcedColors: 'active' });
});
afterAll(() => world?.close());

const colour = (selector: string, property: string, pseudo = '') =>
  page.evaluate(
    ([at = '', name = '', part]) => {
      const found = document.querySelector(at);
      if (!found) throw new Error(`nothing at ${at}`);
      return getComputedStyle(found, part || null).getPropertyValue(name);
    },
    [selector, property, pseudo],
  );

it('tells the page in sight, a meal that was eaten, what is chosen and the slider where colours are forced', async () => {
  await dashboard.go('Today');
  const paper = await colour('body', 'background-color');
  expect(await colour('.nav a:not([aria-current])', 'border-bottom-color')).toBe(paper);
  expect(await colour('.nav a[aria-current]', 'border-bottom-color')).not.toBe(paper);
  expect(await colour('.meal.eaten', 'background-color', '::before')).not.toBe(paper);
  await dashboard.go('Body');
  expect(await colour('.choice > label:has(:checked)', 'background-color')).not.toBe(paper);
  await dashboard.go('Week');
  expect(await colour('input[type="range"]', 'background-image')).toContain('gradient');
  expect(await colour('input[type="range"]', 'forced-color-adjust')).toBe('none');
});

it('tells which suggestion is chosen in the popup where colours are forced', async () => {
  const popup = await world.pairExtension();
  await popup.page.emulateMedia({ forcedColors: 'active' });
  await popup.line.pressSequentially('100 oat');
  await popup.options.nth(1).waitFor();
  await popup.line.press('ArrowDown');
  const borders = await popup.options.evaluateAll((options) =>
    options.map((option) => getComputedStyle(option).borderLeftColor),
  );
  expect(new Set(borders).size).toBe(2);
});

it('prints no form', async () => {
  await page.emulateMedia({ forcedColors: 'none', media: 'print' });
  await dashboard.page.goto(`${world.url}/#/body`);
  await page.getByRole('heading', { level: 1, name: 'Body' }).waitFor();
  await page.getByRole('table', { name: 'Weigh-ins, newest first' }).waitFor();
  expect(await page.locator('form:visible').count()).toBe(0);
  await page.emulateMedia({ media: 'screen' });
  expect(await page.locator('form:visible').count()).toBeGreaterThan(3);
});
