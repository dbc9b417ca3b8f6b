import { addDays, datesUpTo } from '@platewright/core/season/dates.ts';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { setUpAthlete, TODAY } from './athlete.ts';
import { Dashboard } from './pages/dashboard.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let page: Page;
let dashboard: Dashboard;
beforeAll(async () => {
  world = await startWorld();
  page = await world.openDashboard();
  await setUpAthlete(page);
  dashboard = new Dashboard(page);
});
afterAll(() => world?.close());

const press = async (name: string | RegExp) => {
  await page.getByRole('button', { name }).first().focus();
  await page.keyboard.press('Enter');
};
/** What has the focus, in its own words. */
const focused = () =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at?.getAttribute('aria-label') ?? (at?.matches('h2') ? at.textContent : (at?.id ?? ''));
  });

it('leads to the row beside one that is removed, and to the section when it was the last', async () => {
  await dashboard.go('Body');
  const dates = datesUpTo(addDays(TODAY, -1), 2);
  const paste = page.getByRole('textbox', { name: 'One weigh-in a line' });
  await paste.fill(dates.map((date) => `${date} 82`).join('\n'));
  await press('Take in 2 weigh-ins');
  await dashboard.said('Took in 2 weigh-ins.');
  await press(/^Remove the weigh-in/);
  await expect.poll(() => page.getByRole('button', { name: /^Remove the weigh-in/ }).count()).toBe(1);
  await expect.poll(focused).toMatch(/^Remove the weigh-in/);
  await page.keyboard.press('Enter');
  await page.getByText(/^It needs one weigh-in to start/).waitFor();
  await expect.poll(focused).toBe('main');
  await press('Undo');
  await dashboard.said('Undone.');
  await expect.poll(focused).toBe('main');
});

it('leads back to its section when a form is left or sent', async () => {
  await dashboard.go('Plan');
  await press('Plan a phase');
  await press('Leave it');
  await expect.poll(focused).toBe('Phases');
  await press('Plan a phase');
  await page.getByLabel('From', { exact: true }).fill(addDays(TODAY, 60));
  // The button that is pressed is disabled while it sends.
  await press('Save the phase');
  await page.getByRole('button', { name: 'Plan a phase' }).waitFor();
  await expect.poll(focused).toBe('Phases');
});
