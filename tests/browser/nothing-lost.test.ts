import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ATHLETE, setUpAthlete } from './athlete.ts';
import type { PopupPage } from './pages/popup.ts';
import { storeEdits } from './store-edits.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let dashboard: Page;
let popup: PopupPage;
beforeAll(async () => {
  world = await startWorld();
  dashboard = await world.openDashboard();
  await setUpAthlete(dashboard);
  popup = await world.pairExtension();
  await popup.line.waitFor();
});
afterAll(() => world?.close());

it('gives a typed line back when it could not be saved', async () => {
  await popup.page.evaluate(`
    globalThis.asked = chrome.runtime.sendMessage.bind(chrome.runtime);
    chrome.runtime.sendMessage = async (message) =>
      JSON.stringify(message).includes('"edit"') ? { ok: false, reason: 'The disk is full.' } : asked(message);
  `);
  await popup.log('200 chicken, 50 zzqx, 80g oats');
  await popup.said('Not saved. The disk is full.');
  expect(await popup.line.inputValue()).toBe('200 chicken, 50 zzqx, 80g oats');
  await popup.page.evaluate('chrome.runtime.sendMessage = globalThis.asked');
  await popup.line.press('Enter');
  await popup.said('Logged 2 foods');
  expect(await popup.line.inputValue()).toBe('50 zzqx');
  await popup.line.fill('');
});

it('says which part of a standing meal it could not log', async () => {
  const per100 = { energyKcal: 60, proteinG: 10, carbohydrateG: 4, fatG: 0 };
  const food = { aliases: [], state: 'as eaten', per100, portions: [] };
  await storeEdits(dashboard, [
    { kind: 'food', athlete: ATHLETE, id: 'own-skyr', fields: { ...food, name: 'Skyr' } },
    { kind: 'food', athlete: ATHLETE, id: 'own-bar', fields: { ...food, name: 'Oat bar' } },
    {
      kind: 'standing-meal',
      athlete: ATHLETE,
      id: 'own-bowl',
      fields: { name: 'Bowl', items: ['own-skyr', 'own-bar'].map((id) => ({ food: id, grams: 60 })) },
    },
    { kind: 'food', athlete: ATHLETE, id: 'own-bar', fields: { removed: true } },
  ]);
  await popup.options.filter({ hasText: 'Bowl' }).waitFor();
  await popup.line.press('Alt+1');
  await popup.said(/Logged Bowl to meal \d, all but a food no longer in the larder\./);
  await dashboard.bringToFront();
  await dashboard.getByRole('button', { name: 'Bowl', exact: true }).click();
  await dashboard.getByText(/Logged Bowl to meal \d, all but a food no longer in the larder\./).waitFor();
});

it('shows the grams that were typed, and keeps an amount that was only looked at', async () => {
  const amount = (name: string) => popup.page.getByRole('button', { name: `of ${name}, change` });
  await popup.page.bringToFront();
  await popup.line.pressSequentially('8 oz turkey, 2.5 g sugar, 0.4 g salt');
  const draft = popup.page.getByRole('region', { name: 'As it will be logged' });
  await draft.getByText('2.5 g Sugar').waitFor();
  await draft.getByText('0.4 g Salt').waitFor();
  await popup.line.press('Enter');
  await popup.said('Logged 3 foods');
  await amount('Turkey breast, roasted').click();
  await popup.page.keyboard.press('Enter');
  await amount('Turkey breast, roasted').getByText('8 oz · 226.8 g').waitFor();
  await amount('Sugar').getByText('2.5 g').click();
  await popup.page.keyboard.type('3.5');
  await popup.page.keyboard.press('Enter');
  await popup.said('Sugar: 3.5 g.');
  await amount('Turkey breast, roasted').getByText('8 oz · 226.8 g').waitFor();
});

it('takes a pasted recipe as the items that its lines are', async () => {
  await world.extension.context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const pasteInto = async (page: Page, field: Locator) => {
    await page.bringToFront();
    await page.evaluate(() => navigator.clipboard.writeText('200 chicken\r\n  100 rice\n\n2 eggs\n'));
    await field.fill('');
    await field.press('Control+v');
    expect(await field.inputValue()).toBe('200 chicken, 100 rice, 2 eggs');
    await field.press('Control+z');
    expect(await field.inputValue()).toBe('');
  };
  await pasteInto(popup.page, popup.line);
  await pasteInto(dashboard, dashboard.getByRole('textbox', { name: 'Typed line' }));
});
