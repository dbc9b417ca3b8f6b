import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setUpAthlete } from './athlete.ts';
import { broken, brokenAtEachWidth } from './broken-rules.ts';
import { Dashboard, pageNames } from './pages/dashboard.ts';
import type { PopupPage } from './pages/popup.ts';
import { startWorld, type World } from './world.ts';

describe.each(['start', 'demo'] as const)('by the rules of WCAG 2.2 AA, after platewright %s', (command) => {
  let world: World;
  let page: Page;
  let popup: PopupPage;
  beforeAll(async () => {
    world = await startWorld(command);
    page = await world.openDashboard();
    popup = await world.openPopup();
  });
  afterAll(() => world?.close());

  const firstRun = async () => {
    expect(await broken(popup.page)).toEqual([]);
    const options = await world.extension.openOptions();
    expect(await brokenAtEachWidth(options)).toEqual([]);
    await options.close();
    expect(await brokenAtEachWidth(page)).toEqual([]);
    await page.getByRole('button', { name: 'Start with these targets' }).click();
    await page.getByRole('alert').waitFor();
    await page.getByRole('textbox', { name: 'Body mass', exact: true }).fill('7');
    expect(await brokenAtEachWidth(page)).toEqual([]);
    await page.goto(`${world.url.replace('127.0.0.1', 'localhost')}/#/today`);
    await page.getByRole('heading', { name: 'Pair this browser' }).waitFor();
    expect(await brokenAtEachWidth(page)).toEqual([]);
    await page.goto(world.url);
    await page.locator('.set-up').waitFor();
    await setUpAthlete(page);
  };
  if (command === 'start') it('the first run is clean: pairing, set-up, popup and options', firstRun);

  it.each(pageNames)('%s is clean, light and dark, on a desk and on a phone', async (name) => {
    await page.setViewportSize({ width: 1280, height: 800 });
    const dashboard = new Dashboard(page);
    await dashboard.go(name);
    await openParts(dashboard, name);
    expect(await brokenAtEachWidth(page)).toEqual([]);
  });

  it('the popup and its options are clean, with a line half read, a move begun and the keys shown', async () => {
    await popup.page.bringToFront();
    await popup.page.reload();
    if (await popup.page.getByLabel('Pairing code').isVisible()) await popup.page.close();
    popup = await world.pairExtension();
    await popup.line.waitFor();
    await popup.log('200 chicken, 2 eggs');
    await popup.said('Logged 2 foods');
    expect(await broken(popup.page)).toEqual([]);
    await popup.line.pressSequentially('80g oats, 5 zzqx, 100 ri');
    await popup.options.first().waitFor();
    await popup.line.press('ArrowDown');
    expect(await broken(popup.page)).toEqual([]);
    await popup.line.fill('');
    await popup.page
      .getByRole('button', { name: /^Move / })
      .first()
      .click();
    expect(await broken(popup.page)).toEqual([]);
    await popup.page.keyboard.press('Escape');
    await popup.line.press('?');
    expect(await broken(popup.page)).toEqual([]);
    const options = await world.extension.openOptions();
    await options.getByText('Paired with the daemon').waitFor();
    expect(await brokenAtEachWidth(options)).toEqual([]);
  });
});

/** Opens what a page keeps folded, so that it is looked at too. */
async function openParts({ page }: Dashboard, name: (typeof pageNames)[number]): Promise<void> {
  const press = (button: string) => page.getByRole('button', { name: button }).first().click();
  switch (name) {
    case 'Today':
      await page.getByRole('textbox', { name: 'Typed line' }).fill('200 chicken, 150 93/7, 5 zzqx');
      await page.getByText('Several foods match').waitFor();
      break;
    case 'Larder':
      // All rows are alike, and a hundred of them take their time.
      await page.getByRole('searchbox', { name: 'Find a food' }).fill('chicken');
      await press('Add a food');
      await press('Save the food');
      await press('Add a portion');
      await press('Add a standing meal');
      break;
    case 'Body':
      await page.getByRole('textbox', { name: 'One weigh-in a line' }).fill('2026-01-01 82\n2026-01-02');
      break;
    case 'Week':
      if (await page.getByRole('button', { name: 'Set another mark' }).isVisible())
        await press('Set another mark');
      break;
    case 'Plan':
      await press('Plan a phase');
      await press('Change the set-up');
      break;
    case 'Devices':
      await press('Show a pairing code');
      await page.getByText('It works once, until').waitFor();
  }
}
