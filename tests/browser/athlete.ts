import { localDate } from '@platewright/core/season/local-date.ts';
import { setUpDefaults } from '@platewright/core/targets/defaults.ts';
import type { Page } from 'playwright-core';
import { storeEdits } from './store-edits.ts';

export const ATHLETE = 'athlete-1';

/** The date of the athlete that is set up here: until the small hours it is still that of the day before. */
export const TODAY = localDate(Date.now(), { timeZone: 'UTC', rolloverHour: setUpDefaults.rolloverHour });

/** Sets up an athlete of 200 lb without the form, over a dashboard that is paired, and shows it. */
export async function setUpAthlete(page: Page): Promise<void> {
  const athlete = {
    ...setUpDefaults,
    name: 'Test athlete',
    sex: 'male',
    birthYear: 1996,
    heightCm: 180,
    startMassKg: 90.7,
    massUnit: 'kg',
    energyUnit: 'kcal',
    timeZone: 'UTC',
  };
  const phase = {
    from: '2026-01-01',
    aim: 'off-season',
    pacePercentPerWeek: 0.25,
    bandLow: 0.1,
    bandHigh: 0.4,
  };
  const edits = [
    { kind: 'athlete', athlete: ATHLETE, id: ATHLETE, fields: athlete },
    { kind: 'phase', athlete: ATHLETE, id: 'phase-1', fields: phase },
  ];
  await storeEdits(page, edits);
  await page.reload();
  await page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();
}
