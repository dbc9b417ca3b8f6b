/** What `npx node tests/browser/screenshots.ts` runs: writes the pictures of docs/screenshots from the demo season. */
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { Dashboard, type PageName } from './pages/dashboard.ts';
import { SetUpPage } from './pages/set-up.ts';
import { startWorld, type World } from './world.ts';

const FOLDER = resolve(import.meta.dirname, '../../docs/screenshots');
const DESK = { width: 1200, height: 1000 };
const PHONE = { width: 390, height: 844 };

/** A picture of what a page shows from its top, as high as it is told at the most. */
async function shoot(page: Page, name: string, mostHeight: number): Promise<void> {
  await page.bringToFront();
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' });
  const { width } = page.viewportSize() ?? DESK;
  const height = Math.min(mostHeight, await page.evaluate(() => document.documentElement.scrollHeight));
  await page.screenshot({
    path: resolve(FOLDER, `${name}.png`),
    fullPage: true,
    clip: { x: 0, y: 0, width, height },
    caret: 'initial',
  });
}

async function shootDemo(world: World): Promise<void> {
  const page = await world.openDashboard(DESK);
  const dashboard = new Dashboard(page);
  const desk: readonly { name: PageName; height: number }[] = [
    { name: 'Today', height: 1000 },
    { name: 'Week', height: 1000 },
    { name: 'Body', height: 900 },
  ];
  for (const { name, height } of desk) {
    await dashboard.go(name);
    await shoot(page, name.toLowerCase(), height);
  }
  await page.setViewportSize(PHONE);
  await dashboard.go('Today');
  await shoot(page, 'phone', PHONE.height);

  const popup = await world.pairExtension();
  await popup.page.getByRole('link', { name: /decide$/ }).waitFor();
  await popup.line.pressSequentially('200 chicken, 250 white rice, 1 tbsp olive oil');
  await popup.page.getByRole('region', { name: 'As it will be logged' }).getByText('kcal').waitFor();
  await popup.line.press('Escape');
  await shoot(popup.page, 'popup', 600);
}

async function shootSetUp(world: World): Promise<void> {
  const page = await world.openDashboard(DESK);
  const setUp = new SetUpPage(page);
  await setUp.choose('Sex', 'Female');
  await setUp.type('Name', 'Ada');
  await setUp.type('Birth year', '1994');
  await setUp.type('Height', '168');
  await setUp.type('Body mass', '66');
  await setUp.targets.getByText('Protein quota', { exact: true }).waitFor();
  await shoot(page, 'set-up', 1000);
}

for (const [command, shootAll] of [
  ['demo', shootDemo],
  ['start', shootSetUp],
] as const) {
  const world = await startWorld(command);
  try {
    await shootAll(world);
  } finally {
    await world.close();
  }
}
