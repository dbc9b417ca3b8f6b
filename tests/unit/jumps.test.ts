import { bodyweightLine } from '@platewright/core/call/bodyweight-line.ts';
import type { CallInput } from '@platewright/core/call/input.ts';
import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
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
