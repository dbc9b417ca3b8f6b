import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ATHLETE, setUpAthlete } from './athlete.ts';
import { storeEdits } from './store-edits.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let dashboard: Page;
beforeAll(async () => {
  world = await startWorld();
  dashboard = await world.openDashboard();
  await setUpAthlete(dashboard);
});
afterAll(() => world?.close());

it('shows the keys on ? and puts them away on Escape, with the typed line still at hand', async () => {
  const popup = await world.pairExtension();
  const { page, line } = popup;
  const keys = page.getByRole('region', { name: 'Keys' });
  await line.press('?');
  await keys.waitFor();
  await line.press('Escape');
  await keys.waitFor({ state: 'detached' });
  await line.pressSequentially('what?');
  expect(await line.inputValue()).toBe('what?');
  expect(await keys.count()).toBe(0);
  await line.fill('');
  await line.press('?');
  await keys.waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Escape');
  await keys.waitFor({ state: 'detached' });
});

it('says on a day with nothing eaten what to type and where the keys are told', async () => {
  const { page, line } = await world.openPopup();
  const hint = page.getByText('Type what you eat, with commas between, and press Enter.');
  await hint.waitFor();
  await line.press('o');
  await hint.waitFor({ state: 'detached' });
});

it('shows what was logged last, wherever the list stood, and all of the ring around what has the focus', async () => {
  const popup = await world.openPopup();
  const { page, line } = popup;
  await popup.log('200 chicken, 2 eggs, 80g oats, 1 banana');
  await popup.said('Logged 4 foods');
  const below = page.locator('.below');
  await below.evaluate((element) => element.scrollTo({ top: element.scrollHeight }));
  await line.press('PageDown');
  await popup.log('150 salmon');
  await popup.said('Logged Salmon');
  await expect.poll(() => below.evaluate((element) => element.scrollTop)).toBe(0);

  const amount = page.getByRole('button', { name: /^150 g of Salmon/ });
  await amount.focus();
  const [ring, list] = [await amount.boundingBox(), await below.boundingBox()];
  // Two pixels off and two pixels thick.
  expect((ring?.x ?? 0) + (ring?.width ?? 0) + 4).toBeLessThanOrEqual((list?.x ?? 0) + (list?.width ?? 0));

  await page.keyboard.press('Enter');
  await page.keyboard.type('15o');
  await page.keyboard.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'Type grams above 0' }).waitFor();
  await page.keyboard.press('Escape');
  await amount.waitFor();
});

it('removes one entry, and logs a standing meal once, however long a key is held', async () => {
  const fields = { name: 'Held', items: [{ food: 'starter-19296', grams: 20 }] };
  await storeEdits(dashboard, [{ kind: 'standing-meal', athlete: ATHLETE, id: 'held', fields }]);
  const popup = await world.openPopup();
  const { page, line } = popup;
  await popup.options.filter({ hasText: 'Held' }).waitFor();
  await page.keyboard.down('Alt');
  for (let i = 0; i < 3; i++) await page.keyboard.down('1');
  await page.keyboard.up('1');
  await page.keyboard.up('Alt');
  await popup.said('Logged Held');
  const honey = page.getByRole('button', { name: '20 g of Honey' });
  await expect.poll(() => honey.count()).toBe(1);
  await line.press('Control+z');
  await popup.said('Undone: Logged Held');
  // One Undo takes one logging back; the list is read anew after it is said.
  await expect.poll(() => honey.count()).toBe(0);

  const entries = page.getByRole('button', { name: /g of Sugar/ });
  await popup.log('31 sugar, 32 sugar, 33 sugar, 34 sugar');
  await popup.said('Logged 4 foods');
  for (const [left, key] of [
    [3, 'Delete'],
    [2, 'Enter'],
  ] as const) {
    await page.getByRole('button', { name: 'Remove Sugar' }).first().focus();
    for (let i = 0; i < 3; i++) await page.keyboard.down(key);
    await page.keyboard.up(key);
    await expect.poll(() => entries.count()).toBe(left);
    await popup.said('Removed Sugar.');
    expect(await entries.count()).toBe(left);
  }
});

it('explains the first of many faults, and the rest does not run over the foot', async () => {
  const { page, line } = await world.openPopup();
  await line.fill(Array.from({ length: 8 }, (_, i) => `${i + 1}0 zzqx${i}`).join(', '));
  await line.press('Enter');
  await page.getByText('6 more are marked in the line.').waitFor();
  const [faults, foot] = [
    await page.locator('#line-faults').boundingBox(),
    await page.locator('.foot').boundingBox(),
  ];
  expect((faults?.y ?? 0) + (faults?.height ?? 0)).toBeLessThanOrEqual(foot?.y ?? 0);
  await line.fill('10 zzqx, 20 zzqx, 30 zzqx');
  await line.press('Enter');
  await page.getByText('1 more is marked in the line.').waitFor();
  await line.fill('');
});

it('no longer says what was logged before once Enter could log nothing', async () => {
  const popup = await world.openPopup();
  await popup.log('150 salmon');
  await popup.said('Logged Salmon');
  await popup.line.pressSequentially('200 chicken 100 rice');
  await popup.line.press('Enter');
  await popup.page.getByText('put a comma between two foods').waitFor();
  expect(await popup.page.getByText('Logged Salmon').count()).toBe(0);
  await popup.line.fill('');
  await popup.line.press('Control+z');
  await popup.said('Undone: Logged Salmon');
});
