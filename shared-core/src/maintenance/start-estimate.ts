import { fatAfter } from './energy-density.ts';

/** What is known of a person before the first weigh-in says more. */
export interface Person {
  sex: 'female' | 'male';
  ageYears: number;
  heightCm: number;
  /** Measured body fat in % of body mass. */
  fatPercent?: number;
  /** The body mass it was measured at, kg; without it any mass that is asked about. */
  fatAtKg?: number;
}

/** Resting energy in kcal/d. Mifflin MD, St Jeor ST et al. Am J Clin Nutr 1990;51:241–247. */
export function mifflinStJeorKcal(person: Person, massKg: number): number {
  return 10 * massKg + 6.25 * person.heightCm - 5 * person.ageYears + (person.sex === 'male' ? 5 : -161);
}

/** Resting energy in kcal/d from lean body mass in kg. Cunningham JJ. Am J Clin Nutr 1980;33:2372–2374. */
export function cunninghamKcal(leanKg: number): number {
  return 500 + 22 * leanKg;
}

/**
 * Body fat in % when it was never measured: the regressions on body mass index and age that the adult model uses
 * (Jackson AS et al. Int J Obes 2002;26:789–796, as used in Hall KD et al. Lancet 2011, second-hand), times 0.75 and kept between
 * 8 and 40 (12 and 45 for women), because they overstate fat in muscular people (common practice, no source).
 */
function guessedFatPercent(person: Person, massKg: number): number {
  const index = Math.log(massKg / (person.heightCm / 100) ** 2);
  const male = person.sex === 'male';
  const regression = 0.14 * person.ageYears + (male ? 37.31 * index - 103.94 : 39.96 * index - 102.01);
  return Math.min(male ? 40 : 45, Math.max(male ? 8 : 12, 0.75 * regression));
}

/**
 * Fat mass in kg at a body mass: measured when there is a measurement, guessed otherwise. From the body mass that it was
 * measured at fat moves along the Forbes curve, because a history of weigh-ins may begin with quite another body.
 */
export function startFatKg(person: Person, massKg: number): number {
  const { fatPercent, fatAtKg = massKg } = person;
  if (fatPercent === undefined) return (massKg * guessedFatPercent(person, massKg)) / 100;
  return fatAfter((fatAtKg * fatPercent) / 100, massKg - fatAtKg);
}

/** Physical activity level of someone who trains with weights four or five days a week (common practice, no source). */
const trainedActivityLevel = 1.7;

/** Share of what is eaten that a log shows on average; self-report ran 15 % short in CALERIE, careful logs less (common practice, no source). */
const logShare = 0.965;

/** Relative standard deviation of the start: resting energy within 10 %, activity level within 7 % (common practice, no source). */
const startSpread = 0.12;

/**
 * Maintenance energy before there are data, kcal/d in units of a usual log, with its standard deviation: resting energy (the mean
 * of two equations when fat was measured) times an activity level and what a log shows.
 */
export function startMaintenance(person: Person, massKg: number): { kcal: number; sd: number } {
  const byMass = mifflinStJeorKcal(person, massKg);
  const resting =
    person.fatPercent === undefined
      ? byMass
      : (byMass + cunninghamKcal(massKg - startFatKg(person, massKg))) / 2;
  const kcal = trainedActivityLevel * logShare * resting;
  return { kcal, sd: startSpread * kcal };
}
