import { leanShare } from '@platewright/core/body/lean-share.ts';
import { nextMark } from '@platewright/core/lifts/next-mark.ts';
import { brzyckiKg, epleyKg, repMax } from '@platewright/core/lifts/rep-max.ts';
import { huberFit } from '@platewright/core/trend/huber.ts';
import { theilSen } from '@platewright/core/trend/robust.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const normal = (scale: number) => fc.record({ mean: number(-scale, scale), sd: number(scale / 100, scale) });

it('Theil–Sen turns and shifts with the points, and its interval holds the slope', () => {
  const heights = fc.array(number(-100, 100), { minLength: 5, maxLength: 15 });
  fc.assert(
    fc.property(heights, number(-100, 100), number(-100, 100), (ys, tilt, shift) => {
      const plain = theilSen(
        ys.map((y, x) => ({ x, y })),
        1.645,
      );
      const moved = theilSen(
        ys.map((y, x) => ({ x, y: y + tilt * x + shift })),
        1.645,
      );
      if (!plain || !moved) throw new Error('no line');
      expect(moved.slope).toBeCloseTo(plain.slope + tilt, 6);
      expect(plain.low).toBeLessThanOrEqual(plain.slope);
      expect(plain.high).toBeGreaterThanOrEqual(plain.slope);
    }),
  );
});

it('Theil–Sen and Huber keep to a line when two points in sixteen are wild', () => {
  const place = fc.nat(15);
  const slope = number(-100, 100);
  fc.assert(
    fc.property(slope, slope, place, place, number(-1e4, 1e4), (tilt, level, one, two, wild) => {
      const noise = [0.1, -0.2, 0.15, 0.05, -0.1];
      const points = Array.from({ length: 16 }, (_, x) => ({
        x,
        y: x === one || x === two ? wild : level + tilt * x + (noise[x % 5] ?? 0),
      }));
      expect(Math.abs((theilSen(points, 1.645)?.slope ?? 1e9) - tilt)).toBeLessThan(0.2);
      const fit = huberFit(
        points.map(({ x }) => [1, x]),
        points.map(({ y }) => y),
      );
      expect(Math.abs((fit?.coefficients[1] ?? 1e9) - tilt)).toBeLessThan(0.2);
    }),
  );
});

it('a rep max lies between Epley and Brzycki and above the load', () => {
  fc.assert(
    fc.property(number(1, 400), fc.integer({ min: 2, max: 10 }), (load, repetitions) => {
      const found = repMax(load, repetitions)?.kg ?? Number.NaN;
      const [low, high] = [epleyKg(load, repetitions), brzyckiKg(load, repetitions)].toSorted(
        (a, b) => a - b,
      );
      expect(found).toBeGreaterThanOrEqual((low ?? 0) - 1e-9);
      expect(found).toBeLessThanOrEqual((high ?? 0) + 1e-9);
      expect(found).toBeGreaterThan(load);
    }),
  );
});

it('the next mark asks for more, and never for both at once', () => {
  fc.assert(
    fc.property(number(0, 400), fc.integer({ min: 1, max: 20 }), (load, repetitions) => {
      const next = nextMark(load, repetitions, 2.5);
      expect(Number(next.loadKg > load) + Number(next.repetitions > repetitions)).toBe(1);
    }),
  );
});

it('means lie within their intervals, and the lean share stays a share', () => {
  const evidence = fc.record({
    weeks: fc.constantFrom(4, 12),
    fatKg: number(2, 40),
    tissueKg: normal(8),
    energyKcal: fc.option(normal(60_000)),
    waistCm: fc.option(normal(15)),
  });
  fc.assert(
    fc.property(evidence, (known) => {
      const found = leanShare(known);
      for (const part of [found.leanKg, found.fatKg]) {
        expect(part.interval90.low).toBeLessThanOrEqual(part.mean);
        expect(part.interval90.high).toBeGreaterThanOrEqual(part.mean);
      }
      if (!known.energyKcal && !known.waistCm)
        expect(found.leanKg.mean + found.fatKg.mean).toBeCloseTo(known.tissueKg.mean, 6);
      if (!found.share) return;
      const { mean, interval90 } = found.share;
      expect(interval90.low).toBeGreaterThanOrEqual(0);
      expect(interval90.high).toBeLessThanOrEqual(1);
      expect(mean).toBeGreaterThanOrEqual(interval90.low);
      expect(mean).toBeLessThanOrEqual(interval90.high);
    }),
  );
});
