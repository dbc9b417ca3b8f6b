import { afterAll, beforeAll, expect, it } from 'vitest';
import { setUpAthlete } from './athlete.ts';
import { OptionsPage } from './pages/options.ts';
import { startWorld, type World } from './world.ts';

let world: World;
beforeAll(async () => {
  world = await startWorld();
  await setUpAthlete(await world.openDashboard());
});
afterAll(() => world?.close());

it('takes back the meal that was saved last in a popup that is opened anew, and says what it took', async () => {
  const popup = await world.pairExtension();
  await popup.line.waitFor();
  const meal = await popup.mealNow();
  await popup.log('80g oats');
  await popup.said(`Logged Oats, rolled to meal ${meal}.`);
  await popup.log('200 chicken, 55 honey');
  await popup.said(`Logged 2 foods to meal ${meal}.`);
  await new OptionsPage(await world.extension.openOptions()).allSent();
  await popup.page.close();

  const again = await world.openPopup();
  await again.said(`Logged 2 foods to meal ${meal}.`);
  await again.page.getByRole('button', { name: 'Undo' }).click();
  await again.said(`Undone: Logged 2 foods to meal ${meal}.`);
  await again.entry(meal, 'Honey').waitFor({ state: 'detached' });
  await again.entry(meal, 'Oats, rolled').waitFor();
  await again.page.close();

  const third = await world.openPopup();
  await third.said(`Logged Oats, rolled to meal ${meal}.`);
  await third.line.press('Control+z');
  await third.entry(meal, 'Oats, rolled').waitFor({ state: 'detached' });
  expect(await third.page.getByRole('button', { name: 'Undo' }).count()).toBe(0);
});

it('takes back what Undo failed to, and not what was done before it, when Undo is pressed again', async () => {
  const popup = await world.openPopup();
  await popup.line.waitFor();
  const meal = await popup.mealNow();
  await popup.log('70g oats');
  await popup.said(`Logged Oats, rolled to meal ${meal}.`);
  await popup.log('60g honey');
  await popup.said(`Logged Honey to meal ${meal}.`);

  await popup.page.evaluate(`{
    const { sendMessage } = chrome.runtime;
    chrome.runtime.sendMessage = async (message) => {
      if (message.name !== 'edit') return sendMessage.call(chrome.runtime, message);
      chrome.runtime.sendMessage = sendMessage;
      return { ok: false, reason: 'The disk is full.' };
    };
  }`);
  await popup.line.press('Control+z');
  await popup.said('Not saved. The disk is full.');
  await popup.line.press('Control+z');
  await popup.said(`Undone: Logged Honey to meal ${meal}.`);
  await popup.entry(meal, 'Oats, rolled').waitFor();
});
