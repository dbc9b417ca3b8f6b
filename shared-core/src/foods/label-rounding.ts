/** A range in which the true value lies. */
export interface Range {
  low: number;
  high: number;
}

/**
 * The true kcal behind a printed energy. 21 CFR 101.9(c)(1): below 5 is 0, to 50 the nearest 5, above the nearest 10.
 * Labels elsewhere round finer, so the US steps cover them too, here and below.
 */
export function energyBehind(printed: number): Range {
  if (printed === 0) return { low: 0, high: 5 };
  return around(printed, printed < 50 ? 2.5 : 5);
}

/** The true grams behind a printed fat or saturates. 21 CFR 101.9(c)(2): below 0.5 is 0, below 5 the nearest 0.5, then 1. */
export function fatBehind(printed: number): Range {
  if (printed === 0) return { low: 0, high: 0.5 };
  return around(printed, printed < 5 ? 0.25 : 0.5);
}

/** The true grams behind a printed protein, carbohydrate, fibre or sugars. 21 CFR 101.9(c)(6) and (7): the nearest 1. */
export function gramsBehind(printed: number): Range {
  return around(printed, 0.5);
}

function around(printed: number, half: number): Range {
  return { low: Math.max(0, printed - half), high: printed + half };
}
