import { afterAll, beforeAll, expect, it } from 'vitest';
import { ATHLETE, setUpAthlete } from './athlete.ts';
import { keepEdits } from './keep-edits.ts';
import { Dashboard } from './pages/dashboard.ts';
import { OptionsPage } from './pages/options.ts';
import { startWorld, type World } from './world.ts';

/** A starter food; the daemon will not take an entry of this name. */
const FOOD = 'starter-05064';

let world: World;
beforeAll(async () => {
  world = await startWorld();
});
afterAll(() => world?.close());

it('shows a change that the daemon refused with its reason, holds nothing else up, and lets it go', async () => {
  const page = await world.openDashboard();
  await setUpAthlete(page);
  const popup = await world.pairExtension();
  await popup.line.waitFor();

  await keepEdits(popup.page, [
    { athlete: ATHLETE, kind: 'weigh-in', record: FOOD, fields: { date: '2026-01-01', kg: 80, at: 1 } },
  ]);
  await popup.log('150 oats');
  const meal = await popup.mealNow();
  await popup.entry(meal, 'Oats, rolled').waitFor();
  await new Dashboard(page).entry('Oats, rolled').waitFor();

  const opened = world.extension.context.waitForEvent('page');
  await popup.page.getByRole('button', { name: '1 change was refused: see why' }).click();
  const options = new OptionsPage(await opened);
  await options.refused.getByText('weigh-in: date 2026-01-01, kg 80').waitFor();
  await options.refused.getByText(`The record ${FOOD} is of kind “food”, not “weigh-in”.`).waitFor();

  await options.refused.getByRole('button', { name: 'Send again' }).click();
  await options.refused.getByText('is of kind “food”').waitFor();
  await options.refused.getByRole('button', { name: 'Edit' }).click();
  await options.page.getByRole('textbox', { name: 'kg' }).fill('900');
  await options.page.getByRole('button', { name: 'Save and send' }).click();
  await options.page.getByRole('alert').filter({ hasText: 'weigh-in.kg' }).waitFor();
  await options.page.getByRole('button', { name: 'Leave it' }).click();

  await options.refused.getByRole('button', { name: 'Let go' }).click();
  await options.allSent();
  await popup.page.getByText('was refused').waitFor({ state: 'detached' });
  // The food it stood on is as it was, and can be eaten.
  await popup.log('200 chicken breast roasted');
  await popup.entry(meal, 'Chicken breast, roasted').waitFor();
  expect(await options.refused.count()).toBe(0);
});
