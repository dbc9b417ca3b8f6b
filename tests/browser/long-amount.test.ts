import { afterAll, beforeAll, expect, it } from 'vitest';
import { ATHLETE, setUpAthlete, TODAY } from './athlete.ts';
import { storeEdits } from './store-edits.ts';
import { startWorld, type World } from './world.ts';

let world: World;
beforeAll(async () => {
  world = await startWorld();
});
afterAll(() => world?.close());

it('breaks a portion with a long name, so that it runs into no figure and leaves the food its room', async () => {
  const page = await world.openDashboard();
  await setUpAthlete(page);
  const fields = {
    date: TODAY,
    meal: 1,
    food: 'own',
    name: 'Sweet potato, boiled without skin',
    grams: 377.5,
    amount: '2 1/2 large, thirteen centimetres long and more',
    per100: { energyKcal: 76, proteinG: 1.4, carbohydrateG: 17.7, fatG: 0.1 },
    at: Date.now(),
  };
  await storeEdits(page, [{ kind: 'entry', athlete: ATHLETE, id: 'long', fields }]);
  const entry = page.getByRole('listitem').filter({ hasText: fields.name }).last();
  await entry.waitFor();
  for (const width of [1200, 360]) {
    await page.setViewportSize({ width, height: 900 });
    const [name, grams, figures] = await Promise.all(
      ['.entry-name', '.entry-grams', '.figures'].map((part) => entry.locator(part).boundingBox()),
    );
    if (!name || !grams || !figures) throw new Error('a part of the entry has no place');
    expect(name.x + name.width).toBeLessThanOrEqual(grams.x);
    expect(name.width).toBeGreaterThan(100);
    const apart = grams.x + grams.width <= figures.x || grams.y + grams.height <= figures.y;
    expect(apart).toBe(true);
  }
});
