import type { CallInput } from '@platewright/core/call/input.ts';
import { seededRandom } from '../bench/virtual-athletes/random.ts';

/** How an invented athlete lives for a call. */
export interface Life {
  days: number;
  seed?: number;
  startKg?: number;
  /** Tissue change, kg a week. */
  kgPerWeek?: number;
  noiseKg?: number;
  markG?: number;
  /** Logged energy over planned, always or day by day. */
  eats?: number | ((day: number) => number);
  weighed?: (day: number) => boolean;
  logged?: (day: number) => boolean;
}

const planOf = (markG: number) => ({ proteinG: 270, carbohydrateG: markG, fatG: 80 });

/** A call's input for a steady life: 85 kg, 400 g, log as planned, half a kilogram of noise. */
export function callOfLife(life: Life, change: Partial<CallInput> = {}): CallInput {
  const random = seededRandom(life.seed ?? 1);
  const markG = life.markG ?? 400;
  const plan = planOf(markG);
  const days = Array.from({ length: life.days }, (_, day) => {
    const kg =
      (life.startKg ?? 85) + ((life.kgPerWeek ?? 0) * day) / 7 + (life.noiseKg ?? 0.4) * random.normal();
    const eats = typeof life.eats === 'function' ? life.eats(day) : (life.eats ?? 1);
    return {
      day: new Date(Date.UTC(2025, 0, 6) + day * 86_400_000).toISOString().slice(0, 10),
      weightKg: (life.weighed?.(day) ?? true) ? Math.round(10 * kg) / 10 : null,
      intake:
        (life.logged?.(day) ?? true)
          ? { proteinG: eats * 270, carbohydrateG: eats * markG, fatG: eats * 80, complete: true }
          : null,
      prescribed: plan,
    };
  });
  return {
    athlete: { sex: 'male', ageYears: 30, heightCm: 180, fatPercent: 14 },
    aim: { phase: 'off-season', pacePercentPerWeek: 0.35, band: { low: 0.2, high: 0.5 } },
    targets: { ...plan, fatFloorG: 60, carbohydrateBand: { lowG: 405, highG: 540 } },
    days,
    waist: [],
    keyLifts: [],
    calls: [],
    ...change,
  };
}
