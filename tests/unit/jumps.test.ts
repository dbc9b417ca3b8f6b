import { bodyweightLine } from '@platewright/core/call/bodyweight-line.ts';
import type { CallInput } from '@platewright/core/call/input.ts';
import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import type { ToldShift } from '@platewright/core/maintenance/day-table.ts';
import { median } from '@platewright/core/trend/robust.ts';
import { describe, expect, it } from 'vitest';
import { callOfLife, type Life } from '../support/call-input.ts';

const life: Life = { days: 56, kgPerWeek: 0.3, noiseKg: 0.4 };
const seeds = [1, 2, 3, 4, 5, 6];

/** The same life with every reading changed. */
function read(input: CallInput, change: (kg: number, row: number) => number): CallInput {
  const days = input.days.map((day, row) =>
    day.weightKg === null ? day : { ...day, weightKg: change(day.weightKg, row) },
  );
  return { ...input, days };
}

function fail(): never {
  throw new Error('the line has a point for every date');
}

describe('a move of the scale’s zero', () => {
  it.each([-2, 2, 3, 8])('of %i kg does not move pace, maintenance or mark for good', (kg) => {
    for (const seed of seeds) {
      const input = callOfLife({ ...life, seed });
      const plain = weeklyCall(input);
      const call = weeklyCall(read(input, (read, row) => (row >= 38 ? read + kg : read)));
      expect(
        Math.abs((call.pace?.meanPercentPerWeek ?? 9) - (plain.pace?.meanPercentPerWeek ?? 0)),
      ).toBeLessThan(0.15);
      expect(Math.abs((call.maintenanceKcal?.mean ?? 0) - (plain.maintenanceKcal?.mean ?? 0))).toBeLessThan(
        120,
      );
      expect(Math.abs(call.carbohydrateG - plain.carbohydrateG)).toBeLessThanOrEqual(35);
    }
  });

  it('widens the pace while it is young, in place of passing for tissue', () => {
    for (const after of [4, 6, 9])
      for (const seed of seeds) {
        const input = callOfLife({ ...life, days: 38 + after, seed });
        const { pace } = weeklyCall(read(input, (kg, row) => (row >= 38 ? kg + 2 : kg)));
        const truth = (100 * 0.3) / 86;
        const { low = 9, high = 9 } = pace?.interval90 ?? {};
        expect(low - 0.35).toBeLessThan(truth);
        expect(high + 0.2).toBeGreaterThan(truth);
        expect(pace?.meanPercentPerWeek).toBeLessThan(truth + 0.75);
      }
  });

  it('is found beside another of a week later, and both when it goes back', () => {
    for (const seed of seeds) {
      const input = callOfLife({ ...life, days: 70, seed });
      const plain = weeklyCall(input).maintenanceKcal?.mean ?? 0;
      const twice = read(input, (kg, row) => (row >= 46 ? kg - 1 : row >= 38 ? kg + 2 : kg));
      const back = read(input, (kg, row) => (row >= 38 && row < 48 ? kg + 2 : kg));
      for (const shifted of [twice, back])
        expect(Math.abs((weeklyCall(shifted).maintenanceKcal?.mean ?? 0) - plain)).toBeLessThan(200);
    }
  });

  it('keeps the line on the scale and the tissue off it', () => {
    const input = callOfLife({ ...life, noiseKg: 0.3 });
    const line = bodyweightLine(read(input, (kg, row) => (row >= 38 ? kg + 3 : kg)));
    const step = (of: (point: (typeof line)[number]) => number) =>
      of(line[45] ?? fail()) - of(line[31] ?? fail());
    expect(step(({ massKg }) => massKg.mean)).toBeGreaterThan(2.5);
    expect(step(({ tissueKg }) => tissueKg.mean)).toBeLessThan(1.2);
  });

  it('is not seen in a life without one, fast or slow', () => {
    for (const seed of seeds)
      for (const kgPerWeek of [-0.9, 0, 0.4]) {
        const { evidence } = weeklyCall(callOfLife({ ...life, kgPerWeek, seed }));
        expect(evidence.map(({ code }) => code)).not.toContain('scale-shift');
      }
  });
});

describe('a move of the readings that was told', () => {
  const toldOn = 38;
  /** Kilograms more from that day on, in so many days; by how much pace and maintenance then differ from a life without them. */
  const off = (cause: ToldShift['cause'], kg: number, inDays: number, told: boolean) => {
    const errors = seeds.map((seed) => {
      const input = callOfLife({ ...life, days: 66, noiseKg: 0.5, seed });
      const moved = read(
        input,
        (read, row) => read + kg * Math.min(1, Math.max(0, (row - toldOn + 1) / inDays)),
      );
      const shifts = told ? [{ day: input.days[toldOn]?.day ?? fail(), cause }] : [];
      const [plain, call] = [weeklyCall(input), weeklyCall({ ...moved, shifts })];
      return {
        pace: Math.abs((call.pace?.meanPercentPerWeek ?? 9) - (plain.pace?.meanPercentPerWeek ?? 0)),
        kcal: Math.abs((call.maintenanceKcal?.mean ?? 9999) - (plain.maintenanceKcal?.mean ?? 0)),
      };
    });
    return { pace: median(errors.map(({ pace }) => pace)), kcal: median(errors.map(({ kcal }) => kcal)) };
  };

  it.each([
    ['another scale', 1.2, 1],
    ['another scale', -3, 1],
    ['another scale', 8, 1],
    ['creatine', 1.2, 6],
    ['creatine', 2, 7],
    ['creatine', 1.2, 25],
    ['creatine', -1.2, 25],
  ] as const)('%s of %f kg in %i days stays out of pace and maintenance', (cause, kg, inDays) => {
    const { pace, kcal } = off(cause, kg, inDays, true);
    expect(pace).toBeLessThan(0.08);
    expect(kcal).toBeLessThan(60);
  });

  it('is what makes the difference where it is too small or too slow to be found', () => {
    expect(off('creatine', 1.2, 6, false).pace).toBeGreaterThan(2 * off('creatine', 1.2, 6, true).pace);
  });

  it('costs next to nothing when nothing moved', () => {
    for (const cause of ['another scale', 'creatine'] as const) {
      const { pace, kcal } = off(cause, 0, 1, true);
      expect(pace).toBeLessThan(0.06);
      expect(kcal).toBeLessThan(50);
    }
  });

  it('is spoken of for four weeks, with what it moved by', () => {
    const input = callOfLife(life);
    const day = input.days[toldOn]?.day ?? fail();
    const scale = read(input, (kg, row) => (row >= toldOn ? kg + 3 : kg));
    const said = (shifts: readonly ToldShift[]) =>
      weeklyCall({ ...scale, shifts })
        .evidence.filter(({ code }) => code === 'scale-shift')
        .map(({ text }) => text);
    expect(said([{ day, cause: 'another scale' }])).toEqual([
      expect.stringMatching(
        /^You changed the scale 17 days ago: the readings since stand \+[23]\.\d kg off those before\.$/,
      ),
    ]);
    expect(said([{ day, cause: 'creatine' }])[0]).toMatch(
      /^You began or stopped creatine 17 days ago: about \+\d/,
    );
    // On the first day, before it, and after the last there is nothing to have moved from or to.
    for (const outside of ['2024-01-01', input.days[0]?.day ?? fail(), '2026-01-01'])
      expect(said([{ day: outside, cause: 'another scale' }]).join()).not.toContain('You changed');
  });

  it.each([0, 10])('is told apart from another one of %i days before', (before) => {
    const input = callOfLife(life);
    const dayAt = (row: number) => input.days[row]?.day ?? fail();
    const scale = read(input, (kg, row) => (row >= toldOn ? kg + 3 : kg));
    const shifts: ToldShift[] = [
      { day: dayAt(toldOn), cause: 'another scale' },
      { day: dayAt(toldOn - before), cause: 'creatine' },
    ];
    const [moved = 0, bound = 9] = weeklyCall({ ...scale, shifts })
      .evidence.filter(({ code }) => code === 'scale-shift')
      .map(({ numbers }) => numbers.shiftKg);
    expect(Math.abs(moved - 3)).toBeLessThan(1);
    expect(Math.abs(bound)).toBeLessThan(1);
  });

  it('must be a date', () => {
    expect(() => weeklyCall({ ...callOfLife(life), shifts: [{ day: 'soon', cause: 'creatine' }] })).toThrow(
      'shifts[0].day is "soon"',
    );
  });
});

describe('readings in another unit', () => {
  const input = callOfLife({ ...life, days: 40 });
  const pounds = read(input, (kg, row) => (row >= 26 ? Math.round(22.046 * kg) / 10 : kg));

  it('are not believed: the call holds and says what to look at', () => {
    const call = weeklyCall(pounds);
    expect(call.verdict).toBe('not-enough');
    expect(call.carbohydrateG).toBe(400);
    expect(call.summary[0]).toBe('14 weigh-ins of late stand too far from the line to be believed.');
    expect(call.wouldChange[0]?.text).toContain('kilograms or pounds');
  });
});

describe('a stretch without a log', () => {
  /** Twelve days away: nothing logged, nothing weighed, and two kilograms more on the return. */
  const away = (kg: number): CallInput => {
    const input = callOfLife({ ...life, days: 60, logged: (day) => day < 34 || day >= 46 });
    return {
      ...read(input, (read, row) => (row >= 46 ? read + kg : read)),
      days: read(input, (read, row) => (row >= 46 ? read + kg : read)).days.map((day, row) =>
        row >= 34 && row < 46 ? { ...day, weightKg: null } : day,
      ),
    };
  };

  it('that was eaten unlike the plan is not held against maintenance, and is named', () => {
    const plain = weeklyCall(away(0));
    for (const kg of [-2, 2]) {
      const call = weeklyCall(away(kg));
      expect(Math.abs((call.maintenanceKcal?.mean ?? 0) - (plain.maintenanceKcal?.mean ?? 0))).toBeLessThan(
        150,
      );
      const said = call.evidence.map(({ text }) => text).join(' ');
      expect(said).toMatch(/12 days in a row without a log|not counted as tissue/);
    }
  });
});
