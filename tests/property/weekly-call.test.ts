import type { CallInput } from '@platewright/core/call/input.ts';
import { weeklyCall } from '@platewright/core/call/weekly-call.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const isoDay = (index: number) =>
  new Date(Date.UTC(2025, 0, 6) + index * 86_400_000).toISOString().slice(0, 10);
const grams = fc.record({
  proteinG: fc.integer({ min: 0, max: 500 }),
  carbohydrateG: fc.integer({ min: 0, max: 900 }),
  fatG: fc.integer({ min: 0, max: 250 }),
});
/** A reading near the athlete's mass, all equal, or absurd. */
const weight = (kg: number) =>
  fc.oneof(
    { weight: 6, arbitrary: fc.double({ min: kg - 2, max: kg + 2, noNaN: true }) },
    { weight: 2, arbitrary: fc.constant(null) },
    { weight: 2, arbitrary: fc.constant(kg) },
    { weight: 1, arbitrary: fc.double({ min: 20, max: 400, noNaN: true }) },
  );

const histories = fc
  .record({
    kg: fc.oneof(fc.integer({ min: 40, max: 140 }), fc.integer({ min: 20, max: 400 })),
    // Mostly short, because most of the time goes into the noise grid of long ones.
    count: fc.oneof(
      { weight: 5, arbitrary: fc.integer({ min: 1, max: 12 }) },
      { weight: 1, arbitrary: fc.integer({ min: 13, max: 26 }) },
    ),
    drift: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    plan: grams,
    aim: fc.constantFrom(
      { phase: 'off-season', pacePercentPerWeek: 0.35, band: { low: 0.2, high: 0.5 } } as const,
      { phase: 'hold', pacePercentPerWeek: 0, band: { low: -0.15, high: 0.15 } } as const,
      { phase: 'pre-contest', pacePercentPerWeek: -0.7, band: { low: -0.9, high: -0.5 } } as const,
      { phase: 'pre-contest', pacePercentPerWeek: -3, band: { low: -4, high: -2 } } as const,
    ),
    sex: fc.constantFrom('female' as const, 'male' as const),
    heightCm: fc.integer({ min: 140, max: 210 }),
    ageYears: fc.integer({ min: 14, max: 80 }),
    fatPercent: fc.option(fc.integer({ min: 3, max: 55 }), { nil: undefined }),
    shifts: fc.array(
      fc.record({
        day: fc.integer({ min: -5, max: 30 }).map(isoDay),
        cause: fc.constantFrom('another scale' as const, 'creatine' as const),
      }),
      { maxLength: 2 },
    ),
    moved: fc.option(
      fc.record({ ago: fc.integer({ min: 0, max: 20 }), from: fc.integer({ min: 0, max: 900 }) }),
    ),
  })
  .chain((life) =>
    fc.record({
      life: fc.constant(life),
      days: fc.array(
        fc.record({
          kg: weight(life.kg),
          eaten: fc.option(grams),
          complete: fc.boolean(),
          gap: fc.boolean(),
        }),
        {
          minLength: life.count,
          maxLength: life.count,
        },
      ),
    }),
  )
  .map(({ life, days }): CallInput => {
    let index = 0;
    return {
      athlete: {
        sex: life.sex,
        ageYears: life.ageYears,
        heightCm: life.heightCm,
        ...(life.fatPercent === undefined ? {} : { fatPercent: life.fatPercent }),
      },
      aim: life.aim,
      targets: { ...life.plan, fatFloorG: 50, carbohydrateBand: { lowG: 300, highG: 500 } },
      days: days.map((day, row) => {
        index += day.gap && row > 0 ? 2 : 1;
        const kg = day.kg === null ? null : Math.min(400, Math.max(20, day.kg + life.drift * row));
        const intake = day.eaten && { ...day.eaten, complete: day.complete };
        return { day: isoDay(index), weightKg: kg, intake, prescribed: life.plan };
      }),
      shifts: life.shifts,
      waist: [],
      keyLifts: [],
      calls: life.moved
        ? [
            {
              day: isoDay(Math.max(0, index - life.moved.ago)),
              decision: 'accepted',
              proposedG: life.plan.carbohydrateG,
              inForceG: life.plan.carbohydrateG,
            },
          ]
        : [],
    };
  });

const finite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value !== 'object' || value === null || Object.values(value).every(finite);

describe('no call crosses a guard', () => {
  it('holds on 10,000 random histories, absurd ones among them', () => {
    fc.assert(
      fc.property(histories, (input) => {
        const call = weeklyCall(input);
        const { targets, athlete } = input;
        const move = call.carbohydrateG - targets.carbohydrateG;
        expect(call.markInForceG).toBe(targets.carbohydrateG);
        expect(Math.sign(move)).toBe(call.verdict === 'up' ? 1 : call.verdict === 'down' ? -1 : 0);
        // Rate: no call moves by more than 300 g, whole fives.
        expect(Math.abs(move)).toBeLessThanOrEqual(302.5);
        if (move !== 0) expect(call.carbohydrateG % 5).toBe(0);
        if (move < 0) {
          expect(call.carbohydrateG).toBeGreaterThanOrEqual(30);
          const floor = call.evidence.find((item) => item.code === 'energy-availability')?.numbers.floorMarkG;
          expect(call.carbohydrateG).toBeGreaterThanOrEqual((floor ?? Number.NaN) - 1e-6);
          if (athlete.fatPercent !== undefined && call.pace) {
            const latest = call.forecast?.atOldMark.points[1]?.massKg.mean ?? 0;
            const energy = 4 * targets.proteinG + 4 * call.carbohydrateG + 9 * targets.fatG;
            expect(energy).toBeGreaterThan(29.9 * latest * (1 - athlete.fatPercent / 100));
          }
          expect(call.cautions.some(({ level }) => level === 'stop')).toBe(false);
        }
        for (const lever of call.nextLevers)
          if (lever.code === 'fat')
            expect(lever.numbers.toG).toBeGreaterThanOrEqual(targets.fatFloorG - 1e-6);
        if (call.verdict !== 'not-enough' || call.maintenanceKcal)
          expect(finite({ ...call, evidence: [] })).toBe(true);
        expect(call.summary.every((sentence) => sentence.length > 10 && !sentence.includes('NaN'))).toBe(
          true,
        );
      }),
      { numRuns: 10_000 },
    );
  }, 300_000);
});
