import { AxeBuilder } from '@axe-core/playwright';
import { addDays } from '@platewright/core/season/dates.ts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TODAY } from './athlete.ts';
import type { PopupPage } from './pages/popup.ts';
import { numberIn, WeekPage } from './pages/week.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let week: WeekPage;
let popup: PopupPage;
/** g a day. */
let inForce: number;
let proposed: number;
beforeAll(async () => {
  world = await startWorld('demo');
  week = new WeekPage(await world.openDashboard());
  popup = await world.pairExtension();
  await week.go('Week');
  proposed = await week.proposed();
  // Until the first sync is through, the popup shows what came first.
  await popup.page.getByRole('link', { name: /decide$/ }).waitFor();
  inForce = await numberIn(popup.page.getByText(/^Carbohydrate mark \d/));
});
afterAll(() => world?.close());

/** Waits until the popup shows a mark, in its foot and on its beam. */
async function popupShows(markG: number): Promise<void> {
  await popup.page.getByText(`Carbohydrate mark ${markG} g`, { exact: true }).waitFor();
  await popup.beam(`eaten of the mark of ${markG} g`).waitFor();
}

it('says beside the body mass of the set-up that a weekly call put another one in force', async () => {
  await week.go('Plan');
  await week.page.getByRole('button', { name: 'Change the set-up' }).click();
  await week.page.getByText(/^At set-up\. \d\d\.\d kg is in force, by the weekly call\.$/).waitFor();
  await week.page.getByRole('button', { name: 'Leave it' }).click();
  await week.go('Week');
});

describe('the weekly call of the demo season', () => {
  it('says on every screen that the season is invented', async () => {
    await week.page.getByText('Invented season.').waitFor();
    await popup.page.getByText('Invented season').waitFor();
    const options = await world.extension.openOptions();
    await options.getByText('which serves an invented season').waitFor();
    await options.close();
  });

  it('stands on the Week page in two sentences with its numbers, its evidence and what would have changed it', async () => {
    const state = String.raw`^At ${inForce} g of carbohydrate a day you would .+\. `;
    const step = String.raw`Raise the carbohydrate mark by ${proposed - inForce} g to ${proposed} g a day\.$`;
    await week.page
      .getByText(new RegExp(state + step))
      .first()
      .waitFor();
    await week.page.getByRole('term').filter({ hasText: 'Maintenance' }).waitFor();
    for (const heading of ['Used', 'Left out', 'What would have changed it']) {
      const part = week.evidence.getByRole('heading', { name: heading, exact: true });
      await part.waitFor();
      expect(
        await part.locator('xpath=following-sibling::ul[1]').getByRole('listitem').count(),
      ).toBeGreaterThan(0);
    }
  });

  it('leaves room in its table for the ring around what has the focus', async () => {
    const table = week.page.getByRole('region', { name: 'The last 28 days' });
    const [box, link] = [await table.boundingBox(), await table.getByRole('link').first().boundingBox()];
    // Two pixels off and two pixels thick.
    expect((link?.x ?? 0) - (box?.x ?? 0)).toBeGreaterThanOrEqual(4);
  });

  it('stands in short in the popup', async () => {
    const link = popup.page.getByRole('link', { name: `weekly call: up to ${proposed} g, decide` });
    await link.waitFor();
    expect(await link.getAttribute('href')).toBe(`${world.url}/#/week`);
  });

  it('moves the forecast with the slider, up for more and down for less', async () => {
    const atProposed = await week.afterFourWeeks();
    await week.slider.press('End');
    await expect.poll(() => week.afterFourWeeks()).toBeGreaterThan(atProposed);
    const highest = Number(await week.slider.getAttribute('max'));
    await week.forecast.and(week.page.getByLabel(`At ${highest} g carbohydrate`)).waitFor();
    await week.slider.press('Home');
    await expect.poll(() => week.afterFourWeeks()).toBeLessThan(atProposed);
  });

  it('says what moved the scale without being tissue, once that is recorded on the body page', async () => {
    await week.go('Body');
    const shifts = week.section('Scale and creatine');
    const record = shifts.getByRole('button', { name: 'Record' });
    expect(await record.isDisabled()).toBe(true);
    await shifts.getByText('Creatine begun or stopped').click();
    await shifts.getByLabel('From this date on').fill(addDays(TODAY, -9));
    await record.click();
    await week.said('Recorded creatine begun or stopped from');
    // Two causes of one date stand side by side, and what is recorded already is not recorded again.
    await shifts.getByText('Another scale', { exact: true }).click();
    await record.click();
    await week.said('Recorded another scale from');
    await expect.poll(() => shifts.getByRole('listitem').count()).toBe(2);
    await shifts.getByText('Another scale', { exact: true }).click();
    await shifts.getByText('This is recorded.').waitFor();
    expect(await record.isDisabled()).toBe(true);
    await shifts.getByRole('button', { name: /^Remove another scale/ }).click();
    await expect.poll(() => shifts.getByRole('listitem').count()).toBe(1);
    const { violations } = await new AxeBuilder({ page: week.page }).setLegacyMode().analyze();
    expect(violations.map(({ id }) => id)).toEqual([]);
    await week.go('Week');
    await week.evidence.getByText('You began or stopped creatine 9 days ago').waitFor({ state: 'attached' });
    await week.go('Body');
    await shifts.getByRole('listitem').getByRole('button').click();
    await shifts.getByRole('listitem').waitFor({ state: 'detached' });
    await week.go('Week');
  });

  it('moves the mark when accepted, and the popup shows the new mark by itself', async () => {
    await popupShows(inForce);
    await week.button(`Accept ${proposed} g`).click();
    await week.decided(`Accepted: up to ${proposed} g`, proposed);
    // The button is gone; what came in its place has the focus, not the page.
    await expect.poll(() => week.atFocus()).toMatch(/^Accepted: up to/);
    await popupShows(proposed);
    await popup.page.getByRole('link', { name: /^next weekly call / }).waitFor();
  });

  it('goes back when the decision is undone, and asks again', async () => {
    await week.undo();
    await week.button(`Accept ${proposed} g`).waitFor();
    await popupShows(inForce);
    await popup.page.getByRole('link', { name: /decide$/ }).waitFor();
  });

  it('leaves the mark when declined, and can be taken back', async () => {
    await week.button('Decline').click();
    await week.decided(`Declined: up to ${proposed} g`, inForce);
    await popup.page.getByRole('link', { name: /^next weekly call / }).waitFor();
    await popupShows(inForce);
    await week.button('Take it back').click();
    await week.said('The decision is taken back.');
    await week.button('Decline').waitFor();
  });

  it('takes another mark of the athlete’s own', async () => {
    await week.button('Set another mark').click();
    await week.page.getByRole('textbox', { name: 'Carbohydrate mark' }).waitFor();
    // What is typed goes over what was proposed, without a pointer; what it would do stands beside it.
    await week.page.keyboard.type('20');
    await week.page.getByText('It lies beyond what the forecast reaches.').waitFor();
    await week.page.getByText(/^Under \d+ g the plan leaves less than 30 kcal per kg/).waitFor();
    await week.page.keyboard.press('Control+A');
    await week.page.keyboard.type('455');
    await week.page.getByText(/Pace to expect in weeks 2 to 4: \+0\.\d\d % a week\./).waitFor();
    await week.page.keyboard.press('Enter');
    await week.decided(`Set to 455 g instead of up to ${proposed} g`, 455);
    await popupShows(455);
  });
});
