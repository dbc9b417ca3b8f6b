import type { CallInput } from '@platewright/core/call/input.ts';
import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import { dayTargets } from '@platewright/core/targets/day-targets.ts';
import { keptUnits, type Units } from '@platewright/core/units/reader.ts';
import { bodyView } from '@platewright/core/views/body.ts';
import { planView } from '@platewright/core/views/plan.ts';
import { weekView } from '@platewright/core/views/week.ts';
import { describe, expect, it } from 'vitest';
import { callOfLife } from '../support/call-input.ts';
import { athleteOf, callOf, livedSeason, phaseOf } from '../support/season.ts';

const date = '2026-02-22';
const imperial: Units = { mass: 'lb', energy: 'kJ' };
const lose: CallInput['aim'] = {
  phase: 'pre-contest',
  pacePercentPerWeek: -0.7,
  band: { low: -0.9, high: -0.5 },
};

/** Every text of a value, however deep. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}

const metric = /\d\s?(?:kcal|kg|cm|g\/kg)\b/;
const others = /\d\s?(?:kJ|lb|in|g\/lb)\b(?! (?:the|all|part|place))/;
/** Published levels stand behind the athlete's own unit in brackets. */
const withoutBrackets = (text: string) => text.replaceAll(/\([^()]*\)/g, '');

function speaks(value: unknown, units: Units) {
  for (const text of textsIn(value)) {
    const foreign = units.mass === 'kg' ? others : metric;
    expect(withoutBrackets(text)).not.toMatch(foreign);
  }
}

const weekly = (count: number, at: (week: number) => number) =>
  Array.from({ length: count }, (_, week) => ({
    day: new Date(Date.UTC(2025, 0, 6) + (7 * week + 2) * 86_400_000).toISOString().slice(0, 10),
    cm: at(week),
  }));
const shifted = callOfLife({ days: 50, kgPerWeek: 0.3, noiseKg: 0.25 });

const inputs: Record<string, CallInput> = {
  'a gain': callOfLife({ days: 56 }),
  'too few weigh-ins': callOfLife({ days: 10, weighed: (day) => day < 2 }),
  'a plan that is not eaten': callOfLife({
    days: 35,
    kgPerWeek: -0.2,
    eats: (day) => (day < 21 ? 1 : 0.88),
  }),
  'a start far off': callOfLife({ days: 20, kgPerWeek: -0.9 }),
  'the floor of the mark': {
    ...callOfLife({ days: 70, kgPerWeek: -0.1, markG: 35 }, { aim: lose }),
    athlete: { sex: 'male', ageYears: 30, heightCm: 180, fatPercent: 30 },
  },
  'a stop': callOfLife({ days: 42, kgPerWeek: -2.2, eats: 0.5 }, { aim: lose }),
  'energy under the guard': callOfLife({ days: 42, kgPerWeek: -0.7, markG: 60 }, { aim: lose }),
  'a waist that runs ahead': callOfLife(
    { days: 56, kgPerWeek: 0.35 },
    { waist: weekly(8, (week) => 84 + week) },
  ),
  'another scale': {
    ...shifted,
    days: shifted.days.map((day, row) =>
      row >= 38 && day.weightKg !== null ? { ...day, weightKg: day.weightKg + 3 } : day,
    ),
  },
};

describe('texts of the weekly call', () => {
  it.each(Object.entries(inputs))('speak in the athlete’s units: %s', (_, input) => {
    speaks(weeklyCall(input), keptUnits);
    speaks(weeklyCall(input, imperial), imperial);
  });

  it('say the same in both, number by number', () => {
    const of = (name: keyof typeof inputs, code: string, units: Units) => {
      const input = inputs[name];
      const call = input && weeklyCall(input, units);
      const items = [...(call?.evidence ?? []), ...(call?.nextLevers ?? [])];
      return items.find((item) => item.code === code)?.text ?? '';
    };
    expect(of('a gain', 'weigh-ins', keptUnits)).toMatch(/off by about 0\.\d kg\.$/);
    expect(of('a gain', 'weigh-ins', imperial)).toMatch(/off by about [01]\.\d lb\.$/);
    expect(of('a gain', 'maintenance', keptUnits)).toMatch(/^Maintenance is \d{4} kcal a day/);
    expect(of('a gain', 'maintenance', imperial)).toMatch(/^Maintenance is 1\d\u202f\d[05]0 kJ a day/);
    expect(of('a waist that runs ahead', 'waist', keptUnits)).toMatch(/^Waist \+1\.0 cm a week/);
    expect(of('a waist that runs ahead', 'waist', imperial)).toMatch(/^Waist \+0\.40 in a week/);
    expect(of('another scale', 'scale-shift', imperial)).toMatch(/^The readings moved by \+[67]\.\d lb/);
    expect(of('the floor of the mark', 'cardio', imperial)).toMatch(/about 1?\d?\d\d0 kJ\.$/);
    expect(of('a gain', 'energy-availability', imperial)).toMatch(
      /leaves \d\d kJ per lb \(\d\d kcal per kg\) of fat-free mass; the guard is 56 kJ per lb \(30 kcal per kg\)\./,
    );
    expect(weeklyCall(inputs['a plan that is not eaten'] ?? shifted, imperial).summary[1]).toMatch(
      /the log stands 1\d[05]0 kJ a day under it/,
    );
  });
});

describe('texts of the views', () => {
  it.each([
    ['kg and kcal', keptUnits],
    ['lb and kJ', imperial],
  ])('speak in %s', (_, units) => {
    const own = { massUnit: units.mass, energyUnit: units.energy };
    const season = livedSeason(date, 60);
    const records = { ...season, athlete: { ...season.athlete, ...own } };
    const week = weekView(records, date);
    expect(week.call?.evidence.length).toBeGreaterThan(8);
    speaks(week, units);
    speaks(bodyView(records, date), units);
    speaks(planView(records, date), units);
    const cut = phaseOf({ aim: 'pre-contest', pacePercentPerWeek: -1.3, bandLow: -1.5, bandHigh: -1.1 });
    const cautions = ['kidney', 'diabetes'] as const;
    for (const change of [
      { proteinGPerKg: 1.6, fatGPerKg: 0.4, cautions: [...cautions] },
      { startMassKg: 140, cautions: [...cautions] },
    ])
      for (const calls of [[], [callOf({ markG: 20 })], [callOf({ markG: 700 })]])
        speaks(dayTargets({ athlete: athleteOf({ ...change, ...own }), phases: [cut], calls }, date), units);
  });
});
