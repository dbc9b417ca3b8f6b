import { fatAfter, leanShareOfChange } from './energy-density.ts';

/** Error of a waist that one measures oneself, cm (from memory). */
export const tapeErrorCm = 1;
/** What a kilogram of fat adds to the waist, cm, and how much people differ (common practice, no source). */
export const waistCmPerFatKg = { mean: 0.95, sd: 0.3 } as const;
/** How far the first reading may lie off the waist that later ones follow, cm (common practice, no source). */
export const FIRST_WAIST_SD = 2;

/**
 * How a tape sees a change of tissue since the start, kg: centimetres for each kilogram, by the fat part of the change, and
 * the variance of a reading around that, which grows as people differ.
 */
export function tapeSight(startFatKg: number, changeKg: number): { cmPerKg: number; variance: number } {
  const fatKg = fatAfter(startFatKg, changeKg) - startFatKg;
  return {
    cmPerKg: waistCmPerFatKg.mean * (1 - leanShareOfChange(startFatKg)),
    variance: tapeErrorCm ** 2 + (waistCmPerFatKg.sd * fatKg) ** 2,
  };
}
