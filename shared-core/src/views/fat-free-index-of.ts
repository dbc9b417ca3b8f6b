import { fatFreeMassIndex } from '../body/fat-free-index.ts';
import type { Athlete } from '../records/kinds.ts';
import type { FatEstimate, FatFreeIndex } from './body-types.ts';

/** Fat-free mass index of a body mass in kg, with the error that the estimate of fat brings; null without one. */
export function fatFreeIndexOf(
  { heightCm }: Athlete,
  massKg: number | null,
  fat: FatEstimate | null,
): FatFreeIndex | null {
  if (massKg === null || fat === null) return null;
  const index = fatFreeMassIndex(massKg, fat.percent, heightCm);
  const leaner = fatFreeMassIndex(massKg, fat.percent - fat.errorPercent, heightCm);
  return { ...index, error: leaner.raw - index.raw, source: 'Kouri and others 1995' };
}
