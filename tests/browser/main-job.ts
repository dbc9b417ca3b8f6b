import { equal } from 'node:assert/strict';
import { Dashboard } from './pages/dashboard.ts';
import { SetUpPage } from './pages/set-up.ts';
import type { World } from './world.ts';

/** From the first run to a meal that is logged while the daemon is stopped and then comes to the dashboard. Throws where that fails. */
export async function mainJob(world: World): Promise<void> {
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
  equal(await popup.line.inputValue(), '');
  for (const food of ['Chicken breast, roasted', 'Egg, whole', 'Egg white', 'Oats, rolled']) {
    await popup.entry(meal, food).waitFor();
  }
  await popup.beam('Protein: 107 g eaten of the quota of 300 g').waitFor();

  await world.startDaemon();
  const dashboard = new Dashboard(page);
  for (const food of ['Chicken breast, roasted', 'Egg, whole', 'Egg white', 'Oats, rolled']) {
    await dashboard.entry(food).waitFor();
  }
  equal(await page.getAttribute('body', 'data-same'), 'page');
  await popup.page.getByText(/changes? waits? for the daemon/).waitFor({ state: 'detached' });
  const options = await world.extension.openOptions();
  await options.getByText('None: all that was logged here is with the daemon.').waitFor();
}

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
