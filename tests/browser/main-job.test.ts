import { afterAll, beforeAll, describe, it } from 'vitest';
import { startPostgres } from '../support/postgres.ts';
import { mainJob } from './main-job.ts';
import { PopupPage } from './pages/popup.ts';
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
    world = await startWorld('start', { store: await database() });
  });
  afterAll(() => world?.close());

  it('goes from the first run to a meal that was logged without the daemon and comes to the dashboard by itself', () =>
    mainJob(world));

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
