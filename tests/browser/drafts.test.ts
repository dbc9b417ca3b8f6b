import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { setUpAthlete } from './athlete.ts';
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

const line = () => page.getByRole('textbox', { name: 'Typed line' });
const field = (name: string) => dashboard.section('Weigh in').getByRole('textbox', { name, exact: true });

it('what was typed and not sent is there again when its page is opened anew, for the date it was typed on', async () => {
  await line().fill('200 chicken');
  await page.getByLabel('To', { exact: true }).selectOption('2');
  await dashboard.go('Body');
  await field('Body mass').fill('90.2');
  await field('Note').fill('late');
  await dashboard.go('Today');
  expect(await line().inputValue()).toBe('200 chicken');
  expect(await page.getByLabel('To', { exact: true }).inputValue()).toBe('2');
  await page.getByRole('link', { name: 'The day before' }).click();
  await page.getByRole('heading', { level: 1, name: 'Day' }).waitFor();
  await expect.poll(() => line().inputValue()).toBe('');
  await dashboard.go('Body');
  expect(await field('Body mass').inputValue()).toBe('90.2');
  expect(await field('Note').inputValue()).toBe('late');
  await page.getByRole('button', { name: 'Weigh in', exact: true }).click();
  await dashboard.said('Weighed in at 90.2 kg.');
  await dashboard.go('Today');
  await page.getByRole('button', { name: 'Log', exact: true }).click();
  await dashboard.said('to meal 2.');
  await dashboard.go('Body');
  expect(await field('Body mass').inputValue()).toBe('');
  await dashboard.go('Today');
  expect(await line().inputValue()).toBe('');
});

it('says that typed words are kept where some were, and not where a page could not be read', async () => {
  await line().fill('80g oats');
  await page.getByText('80 g Oats, rolled').waitFor();
  await world.stopDaemon();
  await line().press('Enter');
  const failed = page.getByRole('alert').filter({ hasText: 'The daemon does not answer.' });
  await failed.filter({ hasText: 'What you typed is still here.' }).waitFor();
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name: 'Larder' }).click();
  await failed.waitFor();
  expect(await failed.textContent()).not.toContain('typed');
  await world.startDaemon();
  await failed.waitFor({ state: 'detached' });
  await dashboard.go('Today');
  expect(await line().inputValue()).toBe('80g oats');
});
