import { addDays } from '@platewright/core/season/dates.ts';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ATHLETE, setUpAthlete, TODAY } from './athlete.ts';
import { Dashboard } from './pages/dashboard.ts';
import { storeEdits } from './store-edits.ts';
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

/** What another device does. */
function changeAthlete(fields: object): Promise<void> {
  return storeEdits(page, [{ kind: 'athlete', athlete: ATHLETE, id: ATHLETE, fields }]);
}

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

it('keeps a tape and the folds of calipers that were begun, until they are recorded', async () => {
  const tape = dashboard.section('Tape');
  const calipers = dashboard.section('Calipers');
  const girth = tape.getByRole('textbox', { name: 'Circumference' });
  const chest = calipers.getByRole('textbox', { name: 'chest' });
  await dashboard.go('Body');
  await tape.getByLabel('Site').selectOption('thigh');
  await girth.fill('60');
  await calipers.getByLabel('Method').selectOption('jackson-pollock 7');
  await chest.fill('9');
  await dashboard.go('Today');
  await dashboard.go('Body');
  expect(await tape.getByLabel('Site').inputValue()).toBe('thigh');
  expect(await girth.inputValue()).toBe('60');
  expect(await calipers.getByLabel('Method').inputValue()).toBe('jackson-pollock 7');
  expect(await chest.inputValue()).toBe('9');
  await tape.getByRole('button', { name: 'Record' }).click();
  await dashboard.said('Taped thigh at 60.0 cm.');
  await chest.fill('');
  await dashboard.go('Today');
  await dashboard.go('Body');
  expect(await girth.inputValue()).toBe('');
  expect(await chest.inputValue()).toBe('');
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

it('begins a change of the set-up anew when another device changed it meanwhile, so that saving undoes nothing', async () => {
  const name = page.getByRole('textbox', { name: 'Name', exact: true });
  const open = () => page.getByRole('button', { name: 'Change the set-up' }).click();
  await dashboard.go('Plan');
  await open();
  await name.fill('Ada');
  await dashboard.go('Today');
  await changeAthlete({ name: 'Bea' });
  await dashboard.go('Plan');
  await expect
    .poll(async () => {
      await open();
      const shown = await name.inputValue();
      await page.getByRole('button', { name: 'Leave it' }).click();
      return shown;
    })
    .toBe('Bea');
});

it('takes no figure that was typed in one unit for one of another, once the unit was changed', async () => {
  const energy = page.getByRole('textbox', { name: 'Energy' });
  await dashboard.go('Larder');
  await page.getByRole('button', { name: 'Add a food' }).click();
  await energy.fill('120');
  await dashboard.go('Today');
  await changeAthlete({ energyUnit: 'kJ' });
  await dashboard.go('Larder');
  await page.getByText('kJ', { exact: false }).first().waitFor();
  await page.getByRole('button', { name: 'Add a food' }).click();
  expect(await energy.inputValue()).toBe('');
  await page.getByRole('button', { name: 'Leave it' }).click();
  await changeAthlete({ energyUnit: 'kcal' });
  await dashboard.go('Today');
});

it('keeps what was begun in the forms of set-up, phase, lift, set and standing meal, until it is saved or left', async () => {
  const named = (name: string) => page.getByRole('textbox', { name, exact: true });
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
  const turn = async () => {
    await dashboard.go('Body');
    await dashboard.go('Plan');
  };
  await dashboard.go('Plan');
  await press('Change the set-up');
  await named('Name').fill('Ada');
  await press('Plan a phase');
  await named('Starting mark').fill('345');
  await turn();
  await press('Change the set-up');
  expect(await named('Name').inputValue()).toBe('Ada');
  await press('Leave it');
  await press('Plan a phase');
  expect(await named('Starting mark').inputValue()).toBe('345');
  await press('Save the phase');
  await page.getByText('starting mark 345 g').waitFor();
  await turn();
  await press('Change the set-up');
  expect(await named('Name').inputValue()).not.toBe('Ada');
  await press('Plan a phase');
  expect(await named('Starting mark').inputValue()).toBe('');

  await dashboard.go('Lifts');
  await press('Add the first lift');
  await named('Name').fill('Squat');
  await dashboard.go('Larder');
  await press('Add a standing meal');
  await named('What is in it').fill('80g oats');
  await dashboard.go('Lifts');
  await press('Add the first lift');
  expect(await named('Name').inputValue()).toBe('Squat');
  await press('Save the lift');
  await dashboard.said('Added Squat.');
  await named('Load').fill('140');
  await dashboard.go('Larder');
  await press('Add a standing meal');
  expect(await named('What is in it').inputValue()).toBe('80g oats');
  await press('Leave it');
  await dashboard.go('Lifts');
  expect(await named('Load').inputValue()).toBe('140');
  await press('Add a lift');
  expect(await named('Name').inputValue()).toBe('');
});

it('keeps what is typed while a line is being stored, and the order in which foods were typed', async () => {
  let store = () => {};
  const held = new Promise<void>((resolve) => {
    store = resolve;
  });
  await dashboard.go('Today');
  await page.route('**/v1/records', async (route) => {
    await held;
    await route.continue();
  });
  await line().fill('5 sugar, 200 turkey, 30 honey, 40 almonds');
  await page.getByText('40 g Almonds').waitFor();
  await line().press('Enter');
  await page.getByRole('button', { name: 'Log', exact: true, disabled: true }).waitFor();
  await line().press('End');
  await line().pressSequentially(', 150 cod');
  store();
  await dashboard.said('Logged Sugar');
  expect(await line().inputValue()).toBe('150 cod');
  await page.unroute('**/v1/records');
  await line().fill('');
  const names = page.locator('.meal-entries .entry-name').filter({ hasText: /Sugar|Turkey|Honey|Almonds/ });
  await names.filter({ hasText: 'Almonds' }).waitFor();
  expect(await names.allTextContents()).toEqual(['Sugar', 'Turkey breast, roasted', 'Honey', 'Almonds']);
});

it('reads a food without an amount as the athlete usually eats it', async () => {
  await line().fill('turkey');
  const read = page.locator('.reading-item').getByText('200 g Turkey breast, roasted');
  await read.waitFor();
  await line().fill('');
  await dashboard.go('Larder');
  await page.getByRole('button', { name: 'Add a standing meal' }).click();
  await page.getByRole('textbox', { name: 'What is in it' }).fill('turkey');
  await read.waitFor();
  await page.getByRole('button', { name: 'Leave it' }).click();
  await dashboard.go('Today');
});

it('goes back to the typed line once a food was chosen, so that Enter logs it', async () => {
  await line().fill('150 93/7');
  const choice = page.getByRole('button', { name: 'Ground beef 93/7, cooked' });
  await choice.focus();
  await page.keyboard.press('Enter');
  await choice.waitFor({ state: 'detached' });
  await page.keyboard.press('Enter');
  await dashboard.said('Logged Ground beef 93/7, cooked');
  expect(await line().inputValue()).toBe('');
});

it('shows the new day when a tab that stood open overnight is looked at again', async () => {
  const head = page.locator('.date-pick span');
  const today = await head.textContent();
  const view = await page.evaluate(async (athlete) => {
    const answer = await fetch(`/v1/views/day?athlete=${athlete}`, {
      headers: { 'platewright-protocol': '1' },
    });
    return await answer.json();
  }, ATHLETE);
  await page.route('**/v1/views/day*', (route) => route.fulfill({ json: { ...view, date: '2026-01-01' } }));
  await page.reload();
  await head.filter({ hasText: '1 Jan' }).waitFor();
  await page.unroute('**/v1/views/day*');
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await head.filter({ hasText: today ?? '' }).waitFor();
});

it('says where a line is that was typed before the date changed', async () => {
  const day = await page.evaluate(async (athlete) => {
    const answer = await fetch(`/v1/views/day?athlete=${athlete}`, {
      headers: { 'platewright-protocol': '1' },
    });
    return await answer.json();
  }, ATHLETE);
  await page.route('**/v1/views/day*', (route) =>
    route.fulfill({ json: { ...day, date: addDays(TODAY, -1) } }),
  );
  await dashboard.go('Today');
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect.poll(() => page.getByLabel('Go to a date').inputValue()).toBe(addDays(TODAY, -1));
  await line().fill('200 cod');
  await page.unroute('**/v1/views/day*');
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect.poll(() => line().inputValue()).toBe('');
  await page
    .getByText('“200 cod” is still in the line of')
    .getByRole('link', { name: 'the day before' })
    .click();
  await page.getByRole('heading', { level: 1, name: 'Day' }).waitFor();
  await expect.poll(() => line().inputValue()).toBe('200 cod');
  await line().fill('');
  await dashboard.go('Today');
  await page.getByText('is still in the line').waitFor({ state: 'detached' });
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
