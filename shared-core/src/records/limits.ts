/** What a record may hold at the least and at the most: schemas go by it, and forms say it before anything is sent. */
export const limits = {
  ageYears: { least: 10, most: 120 },
  heightCm: { least: 90, most: 250 },
  fatPercent: { least: 2, most: 70 },
  weighInKg: { least: 20, most: 400 },
  tapeCm: { least: 10, most: 250 },
  /** Calipers open to 85 mm at the most (common practice, no source). */
  foldMm: { least: 1, most: 85 },
  /** 0 for a lift without a load. */
  loadKg: { least: 0, most: 1000 },
  repetitions: { least: 1, most: 100 },
  cycleDays: { least: 1, most: 28 },
} as const;

/** The most grams of one entry, of a carbohydrate mark a day, and the most portions of a food. */
export const mostEntryG = 20_000;
export const mostMarkG = 3000;
export const mostPortions = 20;

export interface Limits {
  least: number;
  most: number;
}

/**
 * The most of each nutrient in 100 g. Beyond what a food can hold, because a label rounds up what stands in half a gram.
 */
export const mostPer100 = { kcal: 10_000, g: 1000, mg: 100_000 } as const;

/** Whether a number is there and within its limits. */
export function isWithin(value: number | undefined, { least, most }: Limits): value is number {
  return value !== undefined && value >= least && value <= most;
}
