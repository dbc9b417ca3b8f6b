import { fitDays } from '@platewright/core/call/fit.ts';
import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import { expect, it } from 'vitest';
import { callOfLife } from '../support/call-input.ts';

const WEEKS_BEFORE = 8;

/** Eight weeks of records, a pause with none, and the days since it ended. */
function afterPause(pauseDays: number, back: number) {
  const known = (day: number) => day < 7 * WEEKS_BEFORE || day >= 7 * WEEKS_BEFORE + pauseDays;
  return callOfLife({ days: 7 * WEEKS_BEFORE + pauseDays + back, weighed: known, logged: known });
}

it.each([
  [130, 0],
  [150, 0],
  [400, 0],
  [1200, 0],
  [150, 1],
  [400, 3],
  [400, 30],
])('has numbers after a pause of %i days, %i days back', (pauseDays, back) => {
  const input = afterPause(pauseDays, back);
  const model = fitDays(input);
  const call = weeklyCall(input);
  for (const known of [model?.tissueKg, model?.maintenanceKcal, model?.paceKgPerWeek(14)]) {
    expect(known?.mean).not.toBeNaN();
    expect(known?.sd).toBeGreaterThan(0);
  }
  expect(JSON.stringify(call)).not.toContain('NaN');
  if (back === 0) expect(call.verdict).toBe('not-enough');
});
