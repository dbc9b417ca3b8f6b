import { AxeBuilder } from '@axe-core/playwright';
import { addDays } from '@platewright/core/season/dates.ts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ATHLETE, setUpAthlete, TODAY } from './athlete.ts';
import { LiftsPage } from './pages/lifts.ts';
import { storeEdits } from './store-edits.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let lifts: LiftsPage;
beforeAll(async () => {
  world = await startWorld();
  const page = await world.openDashboard();
  await setUpAthlete(page);
  lifts = new LiftsPage(page);
});
afterAll(() => world?.close());

async function clean(): Promise<void> {
  const { violations } = await new AxeBuilder({ page: lifts.page }).setLegacyMode().analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join()}`)).toEqual([]);
}

describe('the lifts page', () => {
  it('teaches while it is empty, and takes the first lift', async () => {
    await lifts.go('Lifts');
    await lifts.page.getByText(/^It needs the name of a lift/).waitFor();
    await lifts.addLift('Add the first lift', 'Squat', '2,5');
    await lifts.lift('Key lifts', 'Squat').getByText('No set yet.').waitFor();
  });

  it('records sets, and tells rep max, trend and the next mark', async () => {
    for (const week of [4, 3, 2, 1, 0]) {
      await lifts.record('Squat', String(120 - 2.5 * week), '5', addDays(TODAY, -7 * week));
    }
    const squat = lifts.lift('Key lifts', 'Squat');
    await squat.getByText('122.5 kg × 5').waitFor();
    await squat.getByText(/^90 %: \+/).waitFor();
    await squat.getByRole('img', { name: /^Rep max of Squat on 5 dates: .* Trend \+/ }).waitFor();
    await lifts.page.getByText('Next mark: 122.5 kg × 5').waitFor();
    await clean();
  });

  it('takes back a set that was just recorded, and one of the list', async () => {
    await lifts.record('Squat', '140', '3', TODAY);
    const squat = lifts.lift('Key lifts', 'Squat');
    await squat.getByText('142.5 kg × 3').waitFor();
    await lifts.undo();
    await squat.getByText('142.5 kg × 3').waitFor({ state: 'detached' });
    await squat.getByText('5 sets').click();
    await squat.getByRole('button', { name: /^Remove Squat 120 kg × 5/ }).click();
    await squat.getByText('4 sets').waitFor();
    await lifts.undo();
    await squat.getByText('5 sets').waitFor();
  });

  it('says what is wrong with a load, and takes none for a lift without one', async () => {
    await lifts.addLift('Add a lift', 'Pull-up', '1.25');
    await lifts.load.fill('heavy');
    await lifts.page.getByText('Type a load up to 1000 kg, 0 for none.').waitFor();
    await lifts.record('Pull-up', '0', '9', TODAY);
    await lifts.lift('Key lifts', 'Pull-up').getByText('no load × 10').waitFor();
  });

  it('renames a lift, and makes it a key lift or not, each with a way back', async () => {
    await lifts.press('Not a key lift Pull-up');
    await lifts.lift('Other lifts', 'Pull-up').waitFor();
    await lifts.press('Edit Pull-up');
    await clean();
    await lifts.page.getByRole('textbox', { name: 'Name' }).fill('Chin-up');
    await lifts.press('Save the lift');
    await lifts.lift('Other lifts', 'Chin-up').waitFor();
    await lifts.undo();
    await lifts.lift('Other lifts', 'Pull-up').waitFor();
    await lifts.press('Remove Pull-up');
    await lifts.lift('Other lifts', 'Pull-up').waitFor({ state: 'detached' });
    await lifts.undo();
    await lifts.lift('Other lifts', 'Pull-up').waitFor();
    await clean();
  });
});

describe('calipers on the body page', () => {
  it('tell body fat as they are typed, and are kept', async () => {
    await lifts.go('Body');
    const calipers = lifts.section('Calipers');
    for (const [site, mm] of Object.entries({ chest: '10', abdomen: '20', thigh: '10' })) {
      await calipers.getByRole('textbox', { name: site }).fill(mm);
    }
    await calipers.getByText(/^Body fat 12\.1 %, standard error 3\.\d \(3 skinfolds, Jackson/).waitFor();
    await calipers.getByRole('button', { name: 'Record' }).click();
    const row = calipers.getByRole('row').filter({ hasText: '40.0 mm' });
    await row.filter({ hasText: '12.1 %' }).waitFor();
    await clean();
    await lifts.undo();
    await row.waitFor({ state: 'detached' });
  });
});

describe('the first days of cycles on the body page', () => {
  it('are asked of women only, recorded, and taken back', async () => {
    const cycle = lifts.section('Cycle');
    expect(await cycle.count()).toBe(0);
    await storeEdits(lifts.page, [
      { kind: 'athlete', athlete: ATHLETE, id: ATHLETE, fields: { sex: 'female' } },
    ]);
    const record = cycle.getByRole('button', { name: 'Record' });
    for (const daysAgo of [29, 1]) {
      await cycle.getByLabel('First day of a cycle').fill(addDays(TODAY, -daysAgo));
      await record.click();
      await cycle.getByText('This date is recorded.').waitFor();
    }
    await cycle.getByText('28 days after the last').waitFor();
    await clean();
    await lifts.undo();
    await cycle.getByText('28 days after the last').waitFor({ state: 'detached' });
    await record.click();
    await cycle.getByText('28 days after the last').waitFor();
  });
});
