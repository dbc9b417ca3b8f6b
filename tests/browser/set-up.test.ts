import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { SetUpPage } from './pages/set-up.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let page: Page;
beforeAll(async () => {
  world = await startWorld();
  page = await world.openDashboard();
});
afterAll(() => world?.close());

it('says to mend the marked field where one wrong field hides the targets, and not that something is missing', async () => {
  const setUp = new SetUpPage(page);
  const { targets } = setUp;
  await targets.getByText('body mass are there').waitFor();
  await setUp.choose('Sex', 'Male');
  await setUp.type('Birth year', '1996');
  await setUp.type('Height', '180');
  await setUp.type('Body mass', '90');
  await targets.getByText('Targets of a session day').waitFor();
  await setUp.type('Height', 'tall');
  await targets.getByText('Mend the marked field').waitFor();
  expect(await targets.getByText('body mass are there').count()).toBe(0);
  await setUp.type('Height', '180');
  await targets.getByText('Targets of a session day').waitFor();
});

it('keeps a typed starting mark when the phase is chosen after it', async () => {
  const setUp = new SetUpPage(page);
  await setUp.type('Starting mark', '420 g');
  await setUp.choose('Phase', 'Pre-contest');
  expect(await page.getByRole('textbox', { name: 'Pace aimed for' }).inputValue()).toBe('-0.7');
  expect(await page.getByRole('textbox', { name: 'Starting mark' }).inputValue()).toBe('420 g');
});
