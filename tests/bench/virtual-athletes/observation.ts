import type { Diligence } from './life.ts';
import type { VirtualAthlete } from './population.ts';
import { seededRandom } from './random.ts';
import type { ScaleNoise } from './variants.ts';

/** Errors of the instruments, drawn ahead so that every controller meets the same ones. */
export interface Errors {
  /** Added to the true mass, as a share of it. */
  share: Float64Array;
  /** Added to the true mass, kg: clothes, a late weighing. */
  outlierKg: Float64Array;
  missing: Uint8Array;
  /** Sodium above the habitual, mg; it works through the body, not on the scale. */
  sodiumMg: Float64Array;
  /** Error of the tape, cm, NaN on days without tape. */
  tapeCm: Float64Array;
  /** Waist at the start and its growth with fat, cm and cm/kg. */
  waist: { cm: number; perFatKg: number };
}

/** Draws the errors of scale and tape of one athlete. */
export function instrumentErrors(
  athlete: VirtualAthlete,
  days: number,
  noise: ScaleNoise,
  diligence: Diligence,
): Errors {
  const random = seededRandom(athlete.seed, athlete.number, 41);
  const own = Math.exp(0.3 * random.normal() - 0.045);
  const cycleLength = 26 + Math.floor(5 * random.even());
  const cycleStart = Math.floor(cycleLength * random.even());
  const cyclePeak = athlete.cycle ? (noise.cycle / 100) * (0.4 + 0.6 * random.even()) : 0;
  const tapeEvery = random.chance(0.5) ? 7 : 14;
  const hasTape = random.chance(0.85);
  const male = athlete.profile.sex === 'male';
  const errors: Errors = {
    share: new Float64Array(days),
    outlierKg: new Float64Array(days),
    missing: new Uint8Array(days),
    sodiumMg: new Float64Array(days),
    tapeCm: new Float64Array(days).fill(Number.NaN),
    waist: {
      cm: (male ? 0.455 : 0.43) * athlete.profile.heightCm + 3 * random.normal(),
      perFatKg: random.within(male ? 1 : 0.75, 0.2, 0.3, 1.6),
    },
  };
  let carried = 0;
  for (let day = 0; day < days; day++) {
    const spread = Math.sqrt(1 - noise.carry ** 2) * noise.carried;
    carried = noise.carry * carried + spread * random.normal();
    const phase = ((day + cycleStart) % cycleLength) / cycleLength;
    errors.share[day] =
      (own * (noise.independent * random.normal() + carried)) / 100 +
      weekend(day, noise.weekend / 100) +
      cyclePeak * Math.exp(-(((phase - 0.9) / 0.09) ** 2) / 2);
    const outlier = noise.outlierKg * (random.chance(0.7) ? 1 : -1) * (0.6 + Math.abs(random.normal()));
    errors.outlierKg[day] = random.chance(noise.outlierChance) ? outlier : 0;
    errors.missing[day] = random.chance(diligence.missingWeights) ? 1 : 0;
    const salt = noise.sodiumMg * (0.5 + random.even());
    errors.sodiumMg[day] = random.chance(noise.sodiumChance) ? salt : 0;
    const tape = random.normal();
    if (hasTape && day % tapeEvery === 1) errors.tapeCm[day] = tape;
  }
  return errors;
}

/** Orsama A-L et al. Obes Facts 2014;7:36–47: highest on Sunday and Monday, falling from Tuesday. Day 0 is a Monday. */
function weekend(day: number, height: number): number {
  const rhythm = [0.5, 0.1, -0.2, -0.35, -0.4, -0.1, 0.45];
  return height * (rhythm[day % 7] ?? 0);
}

/** What the scale shows, kg, or null on a day without weighing. Reads to 0.1 kg. */
export function readScale(errors: Errors, day: number, massKg: number): number | null {
  if (errors.missing[day]) return null;
  const shown = massKg * (1 + (errors.share[day] ?? 0)) + (errors.outlierKg[day] ?? 0);
  return Math.round(shown * 10) / 10;
}

/** What the tape shows, cm, or null on a day without tape. Reads to half a centimetre. */
export function readTape(errors: Errors, day: number, fatGainedKg: number): number | null {
  const error = errors.tapeCm[day] ?? Number.NaN;
  if (Number.isNaN(error)) return null;
  return Math.round(2 * (errors.waist.cm + errors.waist.perFatKg * fatGainedKg + error)) / 2;
}
