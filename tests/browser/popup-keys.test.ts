import { afterAll, beforeAll, expect, it } from 'vitest';
import { setUpAthlete } from './athlete.ts';
import { startWorld, type World } from './world.ts';

let world: World;
beforeAll(async () => {
  world = await startWorld();
  await setUpAthlete(await world.openDashboard());
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
