import { roundTo } from '../units/round.ts';

/** Energy as a US label prints it, kcal. 21 CFR 101.9(c)(1): below 5 is 0, to 50 the nearest 5, above the nearest 10. */
export function usLabelEnergy(kcal: number): number {
  if (kcal < 5) return 0;
  return roundTo(kcal, kcal <= 50 ? 5 : 10);
}

/** Fat or saturates as a US label prints them, g. 21 CFR 101.9(c)(2): below 0.5 is 0, below 5 the nearest 0.5, then 1. */
export function usLabelFat(grams: number): number {
  if (grams < 0.5) return 0;
  return roundTo(grams, grams < 5 ? 0.5 : 1);
}

/**
 * Protein, carbohydrate, fibre or sugars as a US label prints them, g. 21 CFR 101.9(c)(6) and (7): below 0.5 is 0, else
 * the nearest 1; `less than 1 g` is taken as 1.
 */
export function usLabelGrams(grams: number): number {
  return grams < 0.5 ? 0 : roundTo(grams, 1);
}

/** Sodium as a US label prints it, mg. 21 CFR 101.9(c)(4): below 5 is 0, to 140 the nearest 5, above the nearest 10. */
export function usLabelSodium(mg: number): number {
  if (mg < 5) return 0;
  return roundTo(mg, mg <= 140 ? 5 : 10);
}

/**
 * Fat, carbohydrate, sugars, protein or fibre as an EU label prints them, g. Commission guidance on tolerances, December
 * 2012, table 4 (figures from memory): to 0.5 is 0, below 10 the nearest 0.1, then the nearest 1.
 */
export function euLabelGrams(grams: number): number {
  if (grams <= 0.5) return 0;
  return roundTo(grams, grams < 10 ? 0.1 : 1);
}

/** A range in which the true value lies. */
export interface Range {
  low: number;
  high: number;
}

/** The true kcal behind a printed energy. Labels elsewhere round finer, so the US steps cover them too. */
export function energyBehind(printed: number): Range {
  if (printed === 0) return { low: 0, high: 5 };
  return around(printed, printed < 50 ? 2.5 : 5);
}

/** The true grams behind a printed fat. */
export function fatBehind(printed: number): Range {
  if (printed === 0) return { low: 0, high: 0.5 };
  return around(printed, printed < 5 ? 0.25 : 0.5);
}

/** The true grams behind a printed protein, carbohydrate, fibre or sugars. */
export function gramsBehind(printed: number): Range {
  return around(printed, 0.5);
}

function around(printed: number, half: number): Range {
  return { low: Math.max(0, printed - half), high: printed + half };
}
