import { afterAll, beforeAll, expect, it } from 'vitest';
import { SetUpPage } from './pages/set-up.ts';
import { startWorld, type World } from './world.ts';

let world: World;
beforeAll(async () => {
  world = await startWorld();
});
afterAll(() => world?.close());

it('says to mend the marked field where one wrong field hides the targets, and not that something is missing', async () => {
  const setUp = new SetUpPage(await world.openDashboard());
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
