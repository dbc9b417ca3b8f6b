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

it('keeps a food and a table of weigh-ins that were begun, until they are sent or left', async () => {
  const name = page.getByRole('textbox', { name: 'Name', exact: true });
  const paste = page.getByRole('textbox', { name: 'One weigh-in a line' });
  const add = () => page.getByRole('button', { name: 'Add a food' }).click();
  await dashboard.go('Larder');
  await add();
  await name.fill('House tofu');
  await dashboard.go('Body');
  await paste.fill('2026-01-02 forgot');
  await dashboard.go('Larder');
  await add();
  expect(await name.inputValue()).toBe('House tofu');
  await page.getByRole('button', { name: 'Leave it' }).click();
  await add();
  expect(await name.inputValue()).toBe('');
  await page.getByRole('button', { name: 'Leave it' }).click();
  await dashboard.go('Body');
  expect(await paste.inputValue()).toBe('2026-01-02 forgot');
  await paste.fill('');
});

it('keeps what is typed while the line before it is sent', async () => {
  await dashboard.go('Today');
  let answer = () => {};
  const held = new Promise<void>((resolve) => {
    answer = resolve;
  });
  await page.route('**/v1/records', async (route) => {
    await held;
    await route.continue();
  });
  await line().fill('100 oats');
  await page.getByText('100 g Oats, rolled').waitFor();
  await line().press('Enter');
  await line().pressSequentially(', 30 honey');
  answer();
  await dashboard.said('Logged Oats, rolled');
  await page.unroute('**/v1/records');
  await expect.poll(() => line().inputValue()).toBe('30 honey');
  await line().fill('');
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
