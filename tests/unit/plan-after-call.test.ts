import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import { energyKcal } from '@platewright/core/foods/atwater.ts';
import { addDays } from '@platewright/core/season/dates.ts';
import { askedOn } from '@platewright/core/targets/asked.ts';
import { dayTargets } from '@platewright/core/targets/day-targets.ts';
import { keptUnits } from '@platewright/core/units/reader.ts';
import { callInput } from '@platewright/core/views/call-input.ts';
import { decideCall } from '@platewright/core/views/decide-call.ts';
import type { SeasonRecords } from '@platewright/core/views/season-records.ts';
import { weekView } from '@platewright/core/views/week.ts';
import { describe, expect, it } from 'vitest';
import { athleteOf, livedSeason, phaseOf } from '../support/season.ts';

const date = '2026-02-22';

/** The records once the call of a date was decided. */
function decided(records: SeasonRecords, on: string, decision: 'accepted' | 'changed', markG?: number) {
  const record = decideCall(records, on, { decision, markG }, Date.parse(on));
  if ('noCall' in record) throw new Error(record.noCall);
  const call = { id: `call-${on}`, athlete: records.athlete.id, ...record };
  return { ...records, calls: [...records.calls, call] };
}

/** Loses on what the log shows, so that the call moves the mark up; eats little fat at a high mark. */
const lean: SeasonRecords = {
  ...livedSeason(date, 60),
  athlete: athleteOf({ fatGPerKg: 0.5 }),
  phases: [phaseOf({ from: '2025-12-25', pacePercentPerWeek: 0.75, bandLow: 0.6, bandHigh: 0.9 })],
  calls: [],
};

describe('the plan after an accepted call', () => {
  it('is what the call forecast: protein, mark, fat and energy', () => {
    let records = lean;
    let moves = 0;
    for (let week = 5; week >= 0; week--) {
      const on = addDays(date, -7 * week);
      const { call, planAfter } = weekView(records, on);
      records = decided(records, on, 'accepted');
      const after = askedOn(records, on);
      expect(planAfter).toEqual({
        bodyMassKg: after.bodyMassKg,
        fatFloorG: after.fat.floorG,
        energyKcal: after.energyKcal,
        proteinG: after.protein.quotaG,
        carbohydrateG: after.mark.markG,
        fatG: after.fat.targetG,
      });
      const input = callInput(records, on);
      const targets = {
        ...input.targets,
        proteinG: after.protein.quotaG,
        fatG: after.fat.targetG,
      };
      expect(call?.forecast).toEqual(weeklyCall({ ...input, targets }, keptUnits).forecast);
      if (call && call.carbohydrateG > call.markInForceG) moves++;
    }
    expect(moves).toBeGreaterThan(0);
  });

  it('moves energy by the grams of the mark alone, however little fat there is', () => {
    const { call, markInForceG } = weekView(lean, date);
    const stayed = askedOn(decided(lean, date, 'changed', markInForceG), date);
    for (const markG of [call?.carbohydrateG ?? 0, markInForceG + 300]) {
      const moved = askedOn(decided(lean, date, 'changed', markG), date);
      expect(moved.fat.targetG).toBe(stayed.fat.targetG);
      expect(moved.protein).toEqual(stayed.protein);
      expect(moved.energyKcal - stayed.energyKcal).toBe(4 * (markG - markInForceG));
      expect(moved.energyKcal).toBe(
        energyKcal({
          proteinG: moved.protein.quotaG,
          carbohydrateG: markG,
          fatG: moved.fat.targetG,
        }),
      );
    }
  });

  it('says that fat lies under its share of energy, and which rate would reach it', () => {
    const records = decided(lean, date, 'changed', 700);
    const { fat, bodyMassKg, gaveWay } = dayTargets(records, date);
    expect(fat.targetG).toBeLessThan(fat.floorG);
    const said = gaveWay.find((sentence) => sentence.startsWith('The fat floor'));
    expect(said).toMatch(/of energy\) gave way to the fat target of 46 g, which is \d+\.\d %/);
    const rate = Number(/A fat rate of (\d\.\d\d) g\/kg/.exec(said ?? '')?.[1]);
    expect(rate * bodyMassKg).toBeGreaterThanOrEqual(fat.floorG);
    expect(
      dayTargets({ ...records, athlete: { ...lean.athlete, fatGPerKg: rate } }, date).gaveWay.join(),
    ).not.toMatch(/fat floor/);
  });
});
