/**
 * How hard the world is. The spread of real people is only partly published, so the same run is repeated on
 * worlds that differ: a controller that is good on one of them only has learnt that one.
 */
export interface World {
  /** Resting energy against the formula: standard deviation of the relative error. */
  restingSd: number;
  activity: { mean: number; sd: number };
  /** Spread of the Forbes constant, standard deviation of its logarithm. */
  forbesSd: number;
  /** Shift of the lean share of energy by training and protein, up in surplus, down in deficit. */
  training: { mean: number; sd: number };
  /** Adaptive thermogenesis and spontaneous activity per unit of energy change. */
  adaptation: { mean: number; sd: number };
  /** Times the published glycogen and extracellular response. */
  water: { mean: number; sd: number };
  /** Random walk of maintenance: standard deviation after one week, kcal/d. */
  driftKcal: number;
  /** Unforeseen steps of maintenance (a job, an injury, a training block): how many in 26 weeks, and how large. */
  steps: { per26Weeks: number; sdKcal: number };
  scale: ScaleNoise;
  eating: EatingNoise;
  /** Whether the weigh-in sees the day's food already (an evening scale). */
  weighsAfterEating: boolean;
  /** Whether the call comes in the morning after the weigh-in, the day still to be eaten; else in the night before. */
  callsInMorning: boolean;
  /** Tells only weights, logs and prescriptions: no tape, no lifts, no measured fat, no date of the aim. */
  terse: boolean;
}

/** Percent of body mass, standard deviations, unless said otherwise. */
export interface ScaleNoise {
  independent: number;
  /** The part that carries over from day to day, and how much of it does. */
  carried: number;
  carry: number;
  /** Height of the weekend over the middle of the week. */
  weekend: number;
  outlierChance: number;
  outlierKg: number;
  /** A day of much salt: chance, and mg of sodium above the habitual. */
  sodiumChance: number;
  sodiumMg: number;
  /** Peak of the cycle's water for women who have one. */
  cycle: number;
}

/** Shares of the prescribed energy, standard deviations. */
export interface EatingNoise {
  day: number;
  week: number;
  /** A constant lean of the person towards more or less than prescribed. */
  person: number;
  /** Error of the log against what was eaten, day by day and constant. */
  logDay: number;
  logPerson: number;
}

const usual: World = {
  restingSd: 0.055,
  activity: { mean: 1.72, sd: 0.11 },
  forbesSd: 0.25,
  training: { mean: 0.02, sd: 0.025 },
  adaptation: { mean: 0.14, sd: 0.05 },
  water: { mean: 1, sd: 0.2 },
  driftKcal: 6,
  steps: { per26Weeks: 1.4, sdKcal: 210 },
  // Together a little over the 0.66 % of Cheuvront SN et al. Int J Sport Nutr Exerc Metab 2004;14:532–540.
  scale: {
    independent: 0.6,
    carried: 0.5,
    carry: 0.55,
    // Turicchi J et al. PLoS One 2020;15:e0232152: 0.35 % within the week.
    weekend: 0.35,
    outlierChance: 0.01,
    outlierKg: 1.5,
    sodiumChance: 0.05,
    sodiumMg: 2000,
    cycle: 0.6,
  },
  eating: { day: 0.05, week: 0.012, person: 0.02, logDay: 0.04, logPerson: 0.04 },
  weighsAfterEating: false,
  callsInMorning: false,
  terse: false,
};

/** The worlds of the bench; `usual` is the one of the printed goals. */
export const worlds: Readonly<Record<string, World>> = {
  usual,
  muscular: {
    ...usual,
    forbesSd: 0.35,
    training: { mean: 0.07, sd: 0.04 },
    activity: { mean: 1.8, sd: 0.15 },
  },
  office: {
    ...usual,
    activity: { mean: 1.65, sd: 0.11 },
    steps: { per26Weeks: 1.2, sdKcal: 200 },
    scale: { ...usual.scale, independent: 0.7, carried: 0.6, carry: 0.6 },
  },
  steady: {
    ...usual,
    activity: { mean: 1.65, sd: 0.11 },
    steps: { per26Weeks: 0.8, sdKcal: 200 },
    scale: { ...usual.scale, independent: 0.8, carried: 0.7, carry: 0.6 },
  },
  restless: { ...usual, driftKcal: 18, steps: { per26Weeks: 2.5, sdKcal: 200 } },
  far: { ...usual, restingSd: 0.1, activity: { mean: 1.6, sd: 0.14 } },
  wet: {
    ...usual,
    water: { mean: 1.35, sd: 0.35 },
    scale: { ...usual.scale, carried: 0.65, carry: 0.75, sodiumChance: 0.1, cycle: 1.1 },
  },
  thrifty: {
    ...usual,
    adaptation: { mean: 0.26, sd: 0.1 },
    restingSd: 0.1,
    water: { mean: 0.7, sd: 0.2 },
  },
  careless: {
    ...usual,
    eating: { day: 0.08, week: 0.025, person: 0.04, logDay: 0.08, logPerson: 0.06 },
    scale: { ...usual.scale, independent: 0.75, outlierChance: 0.03, outlierKg: 2 },
    weighsAfterEating: true,
  },
  terse: { ...usual, callsInMorning: true, terse: true },
  calm: {
    ...usual,
    driftKcal: 3,
    steps: { per26Weeks: 0.5, sdKcal: 150 },
    scale: { ...usual.scale, independent: 0.3, carried: 0.3 },
    eating: { ...usual.eating, day: 0.05, week: 0.015 },
  },
};
