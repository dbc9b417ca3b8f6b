import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { setUpAthlete } from './athlete.ts';
import { Dashboard } from './pages/dashboard.ts';
import { startWorld, type World } from './world.ts';

let world: World;
let page: Page;
let dashboard: Dashboard;
beforeAll(async () => {
  world = await startWorld();
  page = await world.openDashboard();
  await setUpAthlete(page);
  dashboard = new Dashboard(page);
});
afterAll(() => world?.close());

const line = () => page.getByRole('textbox', { name: 'Typed line' });

/** Types a line, and waits until its foods are read out of it. */
async function type(typed: string, read: string): Promise<void> {
  await line().fill(typed);
  await page.getByText(read).first().waitFor();
}

/** Has the daemon store what `send` sends, while its answer is lost on the way, whole or from within. */
async function unheard(send: () => Promise<void>, cut: 'before' | 'within' = 'before'): Promise<void> {
  await page.evaluate((cut) => {
    const { fetch } = window;
    window.fetch = async (url, init) => {
      const response = await fetch(url, init);
      if (init?.method !== 'POST') return response;
      window.fetch = fetch;
      if (cut === 'before') throw new TypeError('cut');
      return new Response(new ReadableStream({ start: (body) => body.error(new TypeError('cut')) }));
    };
  }, cut);
  await send();
  await page.getByRole('alert').filter({ hasText: 'What you typed is still here.' }).waitFor();
}

const storedSchema = z.object({ records: z.array(z.object({ fields: z.record(z.string(), z.unknown()) })) });

/** What one field of a kind holds in all records of the store, in order. */
async function stored(kind: string, field: string): Promise<unknown[]> {
  const answer = await page.evaluate(
    async (path) => (await fetch(path)).json(),
    `/v1/records?kind=${encodeURIComponent(kind)}`,
  );
  return storedSchema
    .parse(answer)
    .records.map(({ fields }) => fields[field])
    .sort();
}

it('a line whose answer was lost is logged once, though its page was left and opened anew', async () => {
  await type('200 chicken, 200 chicken', '200 g Chicken');
  await unheard(() => line().press('Enter'));
  await dashboard.go('Larder');
  await dashboard.go('Today');
  await page.getByText('200 g Chicken').first().waitFor();
  await line().press('Enter');
  await dashboard.said('Logged');
  expect(await stored('entry', 'grams')).toEqual([200, 200]);
});

it('another line after it does not write over what was stored', async () => {
  await type('80g oats', '80 g Oats');
  await unheard(() => line().press('Enter'), 'within');
  await dashboard.entry('Oats, rolled').waitFor();
  await type('150 rice', '150 g White rice');
  await line().press('Enter');
  await dashboard.said('Logged White rice');
  expect(await stored('entry', 'grams')).toEqual([150, 200, 200, 80]);
});

it('a weigh-in whose answer was lost is kept once, and others that are pasted after some that were stored are kept too', async () => {
  await dashboard.go('Body');
  const mass = dashboard.section('Weigh in').getByRole('textbox', { name: 'Body mass', exact: true });
  const weighIn = page.getByRole('button', { name: 'Weigh in', exact: true });
  await mass.fill('90.2');
  await unheard(() => weighIn.click());
  await dashboard.go('Today');
  await dashboard.go('Body');
  await weighIn.click();
  await dashboard.said('Weighed in at 90.2 kg.');
  expect(await stored('weigh-in', 'kg')).toEqual([90.2]);

  const pasted = page.getByLabel('One weigh-in a line: a date and a body mass');
  await pasted.fill('2026-01-03, 91.1');
  await unheard(() => page.getByRole('button', { name: 'Take in 1 weigh-in' }).click());
  await pasted.fill('2026-01-04, 91.4');
  await page.getByRole('button', { name: 'Take in 1 weigh-in' }).click();
  await dashboard.said('Took in 1 weigh-in.');
  expect(await stored('weigh-in', 'kg')).toEqual([90.2, 91.1, 91.4]);
});
