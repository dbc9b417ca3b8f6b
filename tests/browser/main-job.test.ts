import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startPostgres } from '../support/postgres.ts';
import { Dashboard } from './pages/dashboard.ts';
import { PopupPage } from './pages/popup.ts';
import { SetUpPage } from './pages/set-up.ts';
import { startWorld, type World } from './world.ts';

const postgres = await startPostgres();
afterAll(() => {
  if (typeof postgres !== 'string') postgres.stop();
});

const stores = [
  { kept: 'in a file', database: async () => null },
  ...(typeof postgres === 'string' ? [] : [{ kept: 'in PostgreSQL', database: postgres.database }]),
];
if (typeof postgres === 'string') it.skipIf(true)(`with a store in PostgreSQL: ${postgres}`, () => {});

describe.each(stores)('with a store $kept, an athlete', ({ database }) => {
  let world: World;
  beforeAll(async () => {
    world = await startWorld('start', await database());
  });
  afterAll(() => world?.close());

  it('goes from the first run to a meal that was logged without the daemon and comes to the dashboard by itself', async () => {
    const page = await world.openDashboard();
    await setUpByTheTradesRule(new SetUpPage(page));

    const popup = await world.pairExtension();
    await popup.line.waitFor();
    const meal = await popup.mealNow();
    await page.evaluate(() => document.body.setAttribute('data-same', 'page'));

    await world.stopDaemon();
    await page.getByText('The daemon can’t be heard.').waitFor();
    await popup.log('200 chicken, 2 eggs + 6 whites, 80g oats');
    await popup.said(`Logged 4 foods to meal ${meal}.`);
    await popup.said('4 changes wait for the daemon.');
    expect(await popup.line.inputValue()).toBe('');
    for (const food of ['Chicken breast, roasted', 'Egg, whole', 'Egg white', 'Oats, rolled']) {
      await popup.entry(meal, food).waitFor();
    }
    await popup.beam('Protein: 107 g eaten of the quota of 300 g').waitFor();

    await world.startDaemon();
    const dashboard = new Dashboard(page);
    for (const food of ['Chicken breast, roasted', 'Egg, whole', 'Egg white', 'Oats, rolled']) {
      await dashboard.entry(food).waitFor();
    }
    expect(await page.getAttribute('body', 'data-same')).toBe('page');
    await popup.page.getByText(/changes? waits? for the daemon/).waitFor({ state: 'detached' });
    const options = await world.extension.openOptions();
    await options.getByText('None: all that was logged here is with the daemon.').waitFor();
  });

  it('keeps a line that was typed and sent before the larder was read, and logs it then', async () => {
    const page = await world.extension.context.newPage();
    await page.addInitScript(() => {
      const watch = new MutationObserver(() => {
        const line = document.querySelector<HTMLInputElement>('#typed-line');
        if (line === null) return;
        watch.disconnect();
        line.value = '55 honey';
        line.dispatchEvent(new InputEvent('input', { bubbles: true }));
        setTimeout(() => line.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true })));
      });
      watch.observe(document, { childList: true, subtree: true });
    });
    await page.goto(`chrome-extension://${world.extension.id}/popup.html`);
    await new PopupPage(page).said('Logged Honey to meal');
  });
});

/** 200 lb ask for 300 g protein and 450 to 600 g carbohydrate by the practice's rule, seen while it is typed. */
async function setUpByTheTradesRule(setUp: SetUpPage): Promise<void> {
  await setUp.choose('Body mass in', 'lb');
  await setUp.choose('Sex', 'Male');
  await setUp.type('Birth year', '1996');
  await setUp.type('Height', '5 ft 11 in');
  await setUp.type('Body mass', '200');
  await setUp.targets.getByText('band 450 to 600 g').waitFor();
  await setUp.targets.getByText('300 g', { exact: true }).waitFor();
  await setUp.start();
}
