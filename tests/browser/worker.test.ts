import type { Change } from '@platewright/core/changes/change.ts';
import { MAX_PUSH } from '@platewright/core/protocol/sync.ts';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ATHLETE, setUpAthlete } from './athlete.ts';
import { type HoldingLine, holdingLine } from './holding-line.ts';
import { keepEdits } from './keep-edits.ts';
import { killWorker } from './kill-worker.ts';
import { OptionsPage } from './pages/options.ts';
import { startWorld, type World } from './world.ts';

/** More than four pushes. */
const CHANGES = 4 * MAX_PUSH + 200;

let world: World;
let line: HoldingLine;
let dashboard: Page;
beforeAll(async () => {
  world = await startWorld();
  line = await holdingLine(world.url);
  dashboard = await world.openDashboard();
  await setUpAthlete(dashboard);
});
afterAll(async () => {
  await world?.close();
  await line?.close();
});

it('brings each change to the daemon once, though the worker is killed in the middle of a sync, twice', async () => {
  const popup = await world.pairExtension(line.url);
  await popup.line.waitFor();
  const options = new OptionsPage(await world.extension.openOptions());
  await options.allSent();

  line.cut();
  await keepEdits(popup.page, Array.from({ length: CHANGES }, weighIn));
  await options.waiting(CHANGES);
  await popup.page.close();

  // The daemon stores the third push, the worker never hears of it.
  const third = line.holdAfter(2);
  line.mend();
  await options.page.getByRole('button', { name: 'Sync now' }).click();
  await third;
  await killWorker(options.page);
  await options.waiting(CHANGES - 2 * MAX_PUSH);

  // After its return it sends these again, and is killed again.
  const again = line.holdAfter(1);
  line.mend();
  const opened = await world.openPopup();
  await again;
  await killWorker(options.page);
  await options.waiting(CHANGES - 3 * MAX_PUSH);
  await opened.page.close();

  line.mend();
  await world.openPopup();
  await options.allSent();
  const stored = (await changesOf(dashboard)).filter(({ kind }) => kind === 'weigh-in');
  expect(stored).toHaveLength(CHANGES);
  expect(new Set(stored.map(({ id }) => id)).size).toBe(CHANGES);
  expect(new Set(stored.map(({ record }) => record)).size).toBe(CHANGES);
});

function weighIn(_: unknown, number: number) {
  const fields = { date: '2026-01-01', kg: 80 + number / 1000, at: number };
  return { athlete: ATHLETE, kind: 'weigh-in', record: `weigh-in-${number}`, fields };
}

/** The daemon's whole log. */
function changesOf(page: Page): Promise<Change[]> {
  return page.evaluate(async () => {
    const changes = [];
    for (let since = 0, more = true; more; ) {
      const answer = await (await fetch(`/v1/pull?since=${since}&limit=2000`)).json();
      changes.push(...answer.changes);
      since = answer.seq;
      more = answer.more;
    }
    return changes;
  });
}
