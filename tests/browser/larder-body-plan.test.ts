import { addDays, datesUpTo } from '@platewright/core/season/dates.ts';
import { formatDayOfYear, formatWeekday } from '@platewright/core/ui/format-date.ts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setUpAthlete, TODAY } from './athlete.ts';
import { Dashboard } from './pages/dashboard.ts';
import { LarderPage } from './pages/larder.ts';
import type { PopupPage } from './pages/popup.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let dashboard: Dashboard;
let popup: PopupPage;
beforeAll(async () => {
  world = await startWorld();
  const page = await world.openDashboard();
  await setUpAthlete(page);
  dashboard = new Dashboard(page);
  popup = await world.pairExtension();
  await popup.line.waitFor();
});
afterAll(() => world?.close());

describe('the larder', () => {
  it('checks the label of a food of one’s own while it is typed, and keeps the food', async () => {
    const larder = new LarderPage(dashboard.page);
    await larder.go('Larder');
    await larder.press('Copy Chickpeas, cooked');
    // The form stands above the list that was pressed in.
    await larder.focused('Name');
    await larder.press('Save the food');
    await larder.page.getByText('Another food is called so').waitFor();
    await larder.press('Leave it');
    await larder.press('Add a food');
    await larder.focused('Name');
    await larder.page.getByText('Carbohydrate here includes fibre').waitFor();
    await larder.type('Name', 'House whey');
    await larder.type('Energy', 'much');
    await larder.page.getByText('Type a number, 0 or more.').waitFor();
    await larder.type('Energy', '1590');
    await larder.type('Protein', '78');
    await larder.type('Carbohydrate', '7');
    await larder.type('Fat', '5');
    await larder.labelCheck.filter({ hasText: 'disagrees' }).waitFor();
    await larder.labelCheck.filter({ hasText: 'It looks like kJ' }).waitFor();
    await larder.type('Energy', '380');
    await larder.labelCheck.filter({ hasText: 'agrees.' }).waitFor();
    await larder.press('Save the food');
    await larder.find('house');
    await larder.food('House whey').waitFor();
    await popup.log('40 house whey');
    await popup.said('Logged House whey to meal');
  });

  it('takes back what a food was said to be', async () => {
    const larder = new LarderPage(dashboard.page);
    const say = async (kind: string) => {
      await larder.press('Edit House whey');
      await larder.page.getByText(kind, { exact: true }).click();
      await larder.press('Save the food');
    };
    await say('quick');
    await larder.food('House whey').filter({ hasText: 'quick carbohydrate' }).waitFor();
    await say('unsaid');
    await larder.food('House whey').filter({ hasNotText: 'quick carbohydrate' }).waitFor();
  });

  it('offers a hidden food no longer, and offers it again', async () => {
    const larder = new LarderPage(dashboard.page);
    const offered = popup.page.getByRole('option', { name: 'Honey', exact: true });
    await popup.line.fill('20 honey');
    await offered.waitFor();

    await larder.find('honey');
    await larder.press('Hide Honey');
    await larder.said('Hid Honey.');
    await offered.waitFor({ state: 'detached' });

    await larder.page.getByText('Hidden', { exact: true }).click();
    await larder.press('Offer again Honey');
    await offered.waitFor();
    await popup.line.fill('');
  });

  it('saves a standing meal, which the popup logs in two keys', async () => {
    const larder = new LarderPage(dashboard.page);
    await larder.press('Add a standing meal');
    const meal = larder.section('Standing meals');
    await meal.getByRole('textbox', { name: 'Name' }).fill('Shake');
    await meal.getByRole('textbox', { name: 'What is in it' }).fill('40 house whey, 1 banana');
    await larder.press('Save the standing meal');
    await meal.getByRole('heading', { name: 'Shake' }).waitFor();

    await popup.options.filter({ hasText: 'Shake' }).waitFor();
    await popup.line.press('Alt+1');
    await popup.said('Logged Shake to meal');
    await popup.entry(await popup.mealNow(), 'Banana').waitFor();
  });
});

describe('a standing meal with a hidden food', () => {
  it('can still be changed', async () => {
    const larder = new LarderPage(dashboard.page);
    await larder.page.getByText('Own', { exact: true }).click();
    await larder.find('house');
    await larder.press('Hide House whey');
    await larder.said('Hid House whey.');
    await larder.press('Edit Shake');
    await larder.page.getByText('40 g House whey').waitFor();
    await larder.page.getByRole('textbox', { name: 'Name' }).fill('Morning shake');
    await larder.press('Save the standing meal');
    await larder.section('Standing meals').getByRole('heading', { name: 'Morning shake' }).waitFor();
  });
});

describe('the popup, by keyboard alone', () => {
  const press = (key: string) => popup.page.keyboard.press(key);
  const focused = () => popup.page.evaluate(() => document.activeElement?.getAttribute('aria-label'));

  it('goes to another meal, and logs what can be read while the rest stays in the line', async () => {
    await popup.line.focus();
    for (let meal = await popup.mealNow(); meal > 1; meal--) await press('PageUp');
    await press('PageDown');
    await popup.page.getByLabel('Log to meal 2').waitFor();
    await press('PageUp');
    await popup.page.getByLabel('Log to meal 1').waitFor();
    await popup.log('200 white rice cooked, 50 zzqx, 1/2 cup oats');
    await popup.said('Logged 2 foods to meal 1.');
    expect(await popup.line.inputValue()).toBe('50 zzqx');
    await popup.page.getByText('No food matches 50 zzqx').waitFor();
    await press('Escape');
    await expect.poll(() => popup.line.inputValue()).toBe('');
  });

  it('asks which of several foods is meant, and logs the chosen one at once', async () => {
    await popup.line.pressSequentially('150 93/7');
    await popup.options.first().waitFor();
    await press('Enter');
    await popup.page.getByText('Several foods match 93/7: choose one.').waitFor();
    expect(await popup.options.count()).toBeGreaterThan(1);
    await press('ArrowDown');
    await press('ArrowDown');
    const chosen = popup.page.getByRole('option', { selected: true });
    const name = (await chosen.textContent()) ?? '';
    await press('Enter');
    await popup.said(`Logged ${name} to meal 1.`);
    await popup.entry(1, name).waitFor();
    expect(await popup.line.inputValue()).toBe('');
  });

  it('weighs an entry anew, moves it to another meal, removes it, and undoes each', async () => {
    await press('Tab');
    // The meal may hold what was logged before, by the hour of this run.
    while (!(await focused())?.includes('White rice')) await press('ArrowDown');
    await press('Enter');
    await popup.page.getByRole('textbox', { name: 'Grams of White rice, cooked' }).waitFor();
    await popup.page.keyboard.type('180');
    await press('Enter');
    await popup.said('White rice, cooked: 180 g.');
    await expect.poll(focused).toBe('180 g of White rice, cooked, change');

    await press('m');
    await popup.page.getByRole('group', { name: 'Move White rice, cooked' }).waitFor();
    await press('3');
    await popup.said('Moved White rice, cooked to meal 3.');
    await popup.entry(3, 'White rice, cooked').waitFor();
    await press('Control+z');
    await popup.said('Undone: Moved White rice, cooked to meal 3.');
    await popup.entry(1, 'White rice, cooked').waitFor();

    for (let i = 0; i < 20 && !(await focused())?.includes('White rice'); i++) await press('ArrowUp');
    await press('Delete');
    await popup.said('Removed White rice, cooked.');
    await popup.entry(1, 'White rice, cooked').waitFor({ state: 'detached' });
    await press('Control+z');
    await press('Control+z');
    await popup.said('Undone: White rice, cooked: 180 g.');
    await popup.entry(1, 'White rice, cooked').getByRole('button', { name: '200 g' }).waitFor();
  });

  it('shows its keys', async () => {
    await popup.line.focus();
    await press('?');
    await popup.page.getByRole('heading', { name: 'Keys' }).waitFor();
    await press('?');
    await popup.page.getByRole('heading', { name: 'Keys' }).waitFor({ state: 'detached' });
  });
});

describe('the body page', () => {
  it('takes pasted weigh-ins in, and leaves the line that can’t be read to be put right', async () => {
    await dashboard.go('Body');
    await dashboard.page.getByText(/^It needs one weigh-in to start/).waitFor();
    const [first, second, third, fourth] = datesUpTo(addDays(TODAY, -1), 4);
    const pasted = `${first}; 82,4\n${second}; 82.6 kg\n${third} forgot\n${fourth}, 182.1 lb`;
    const paste = dashboard.page.getByRole('textbox', { name: 'One weigh-in a line' });
    await paste.fill(pasted);
    await dashboard.page.getByText('3 of 4 lines can be read.').waitFor();
    await dashboard.page
      .getByText('No body mass was found after the date: write it as 82.4 or 82.4 kg.')
      .waitFor();
    await dashboard.page.getByRole('button', { name: 'Take in 3 weigh-ins' }).click();
    await dashboard.said('Took in 3 weigh-ins.');
    expect(await paste.inputValue()).toBe(`${third} forgot`);
    const table = dashboard.page.getByRole('table', { name: 'Weigh-ins, newest first' });
    const rowOf = (date = '') => table.getByRole('row').filter({ hasText: formatWeekday(date) });
    await rowOf(fourth).filter({ hasText: '82.6 kg' }).waitFor();
    await dashboard.page.getByRole('img', { name: /^Bodyweight line/ }).waitFor();
    await paste.fill(`${third} 82.5`);
    await dashboard.page.getByRole('button', { name: 'Take in 1 weigh-in' }).click();
    await rowOf(third).waitFor();
  });

  it('asks once about a weigh-in far off the latest body mass, and keeps it at a second press', async () => {
    const mass = dashboard.page.getByRole('textbox', { name: 'Body mass', exact: true });
    const weighIn = dashboard.page.getByRole('button', { name: 'Weigh in', exact: true });
    const asked = dashboard.page.getByRole('alert').filter({ hasText: /is far from the 8\d\.\d kg of late/ });
    await mass.fill('82.9 lb');
    await weighIn.click();
    await asked.filter({ hasText: '37.6 kg' }).waitFor();
    await mass.fill('120');
    await asked.waitFor({ state: 'detached' });
    await mass.press('Enter');
    await asked.filter({ hasText: '120.0 kg' }).waitFor();
    await mass.press('Enter');
    await dashboard.said('Weighed in at 120.0 kg.');
    await asked.waitFor({ state: 'detached' });
    await dashboard.undo();
    await dashboard.said('Undone.');
  });

  it('takes a weigh-in and a tape', async () => {
    await dashboard.page.getByRole('textbox', { name: 'Body mass', exact: true }).fill('82.9');
    await dashboard.page.getByRole('button', { name: 'Weigh in', exact: true }).click();
    await dashboard.said('Weighed in at 82.9 kg.');
    await dashboard.page.getByRole('textbox', { name: 'Circumference' }).fill('84');
    // What was said lies over the foot of the page, and would stay there.
    await dashboard.page.getByText('Weighed in at 82.9 kg.').waitFor({ state: 'detached' });
    await dashboard.section('Tape').getByRole('button', { name: 'Record' }).click();
    await dashboard.said('Taped waist at 84.0 cm.');
    await dashboard.undo();
    await dashboard.said('Undone.');
  });
});

describe('the plan', () => {
  it('plans a phase, and takes it away and back', async () => {
    await dashboard.go('Plan');
    await dashboard.page.getByRole('button', { name: 'Plan a phase' }).click();
    await dashboard.page.getByText('Pre-contest', { exact: true }).click();
    await dashboard.page.getByLabel('From', { exact: true }).fill(addDays(TODAY, 60));
    await dashboard.page.getByRole('button', { name: 'Save the phase' }).click();
    const phase = dashboard
      .section('Phases')
      .getByRole('listitem')
      .filter({ hasText: `pre-contest from ${formatDayOfYear(addDays(TODAY, 60))}` });
    await phase.waitFor();
    await phase.getByRole('button', { name: /^Remove/ }).click();
    await phase.waitFor({ state: 'detached' });
    await dashboard.undo();
    await phase.waitFor();
  });

  it('changes the meals a day, and the popup’s beam has as many notches', async () => {
    await dashboard.page.getByRole('button', { name: 'Change the set-up' }).click();
    await dashboard.page.getByRole('group', { name: 'Meals a day' }).getByText('4', { exact: true }).click();
    await dashboard.page.getByRole('button', { name: 'Save the set-up' }).click();
    await dashboard.page.getByText(/; 4 meals from /).waitFor();
    await popup.beam('of 4 notches reached').waitFor();
  });
});
