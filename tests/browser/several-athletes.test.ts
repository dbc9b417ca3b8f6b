import { afterAll, beforeAll, expect, it } from 'vitest';
import { setUpAthlete } from './athlete.ts';
import { Dashboard } from './pages/dashboard.ts';
import { SetUpPage } from './pages/set-up.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let dashboard: Dashboard;
beforeAll(async () => {
  world = await startWorld();
  const page = await world.openDashboard();
  await setUpAthlete(page);
  dashboard = new Dashboard(page);
});
afterAll(() => world?.close());

it('an owner of one athlete finds the way to a second one, and then the roster of both', async () => {
  const { page } = dashboard;
  await dashboard.go('Plan');
  await page.getByRole('link', { name: 'Set up another athlete' }).click();
  const setUp = new SetUpPage(page);
  await setUp.choose('Sex', 'Female');
  await setUp.type('Name', 'Ada');
  await setUp.type('Birth year', '1994');
  await setUp.type('Height', '168');
  await setUp.type('Body mass', '66');
  await page.getByRole('button', { name: 'Start with these targets' }).click();
  await page.getByRole('heading', { level: 1, name: 'Roster' }).waitFor();
  const athletes = page.getByRole('row').getByRole('link', { name: /^(Ada|Test athlete)$/ });
  await expect.poll(() => athletes.allTextContents()).toEqual(['Ada', 'Test athlete']);

  await athletes.first().click();
  await page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
  const choice = page.getByRole('combobox', { name: 'Athlete' });
  expect(await choice.locator('option:checked').textContent()).toBe('Ada');
});

it('a long name leaves the date of the popup on one line', async () => {
  await dashboard.page.getByRole('combobox', { name: 'Athlete' }).selectOption({ label: 'Test athlete' });
  await dashboard.go('Plan');
  await dashboard.page.getByRole('button', { name: 'Change the set-up' }).click();
  const name = 'Anne-Sophie Featherstonehaugh of the Northern Weightlifters';
  await dashboard.page.getByRole('textbox', { name: 'Name', exact: true }).fill(name);
  await dashboard.page.getByRole('button', { name: 'Save the set-up' }).click();
  await dashboard.page.getByText(`${name}; male`).waitFor();

  const { page } = await world.pairExtension();
  const options = await world.extension.openOptions();
  await options.getByText(name).click();
  await page.bringToFront();
  await page.getByText(name).waitFor();
  await page.keyboard.press('Alt+PageDown');
  await page.getByText('Today', { exact: true }).waitFor();
  const box = await page.locator('.date').boundingBox();
  expect(box?.height).toBeLessThan(30);
  const [today, beside] = [page.getByText('Today', { exact: true }), page.getByText(name)];
  const [left, right] = [await today.boundingBox(), await beside.boundingBox()];
  expect((left?.x ?? 0) + (left?.width ?? 0)).toBeLessThanOrEqual(right?.x ?? 0);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
});
