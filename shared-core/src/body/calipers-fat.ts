import { type FatFinding, type Sex, siriErrorPercent, siriPercent } from './fat-finding.ts';

/** Youngest and oldest of the people that a method was made on, years. */
type Ages = readonly [from: number, to: number];

/** Density = level − slope·S + bend·S² − ageing·age, S in mm. */
interface Curve {
  level: number;
  slope: number;
  bend: number;
  ageing: number;
  densityError: number;
}

/** Men: Jackson AS, Pollock ML. Br J Nutr 1978;40:497–504, abstract seen, coefficients and errors second-hand. Women: Jackson, Pollock, Ward. Med Sci Sports Exerc 1980;12:175. */
const curves: Readonly<Record<Sex, Readonly<Record<3 | 7, Curve>>>> = {
  male: {
    3: { level: 1.10938, slope: 0.0008267, bend: 0.0000016, ageing: 0.0002574, densityError: 0.0077 },
    7: { level: 1.112, slope: 0.00043499, bend: 0.00000055, ageing: 0.00028826, densityError: 0.0078 },
  },
  // Error of the women's 3 folds from memory, of the 7 folds second-hand; all coefficients second-hand.
  female: {
    3: { level: 1.0994921, slope: 0.0009929, bend: 0.0000023, ageing: 0.0001392, densityError: 0.0086 },
    7: { level: 1.097, slope: 0.00046971, bend: 0.00000056, ageing: 0.00012828, densityError: 0.0083 },
  },
};

/** 403 men and 331 women; same sources. */
const generalizedAges: Readonly<Record<Sex, Ages>> = { male: [18, 61], female: [18, 55] };

/**
 * Body fat from three or seven skinfolds, their sum in mm. Three: chest, abdomen, thigh (men) or triceps, thigh,
 * suprailiac (women). Seven: chest, axilla, triceps, subscapular, abdomen, suprailiac, thigh. Siri's equation.
 */
export function jacksonPollockFat(sex: Sex, sites: 3 | 7, sumMm: number, ageYears: number): FatFinding {
  const { level, slope, bend, ageing, densityError } = curves[sex][sites];
  // Past the turn of the parabola thicker folds would read as less fat.
  const sum = Math.min(sumMm, slope / (2 * bend));
  const density = level - slope * sum + bend * sum ** 2 - ageing * ageYears;
  return {
    percent: siriPercent(density),
    errorPercent: siriErrorPercent(density, densityError),
    method: `${sites} skinfolds, Jackson and Pollock ${sex === 'male' ? 1978 : 1980}${beyond(generalizedAges[sex], ageYears)}`,
  };
}

/** Said beside a finding of someone whose age the method was not made on; nothing within it. */
function beyond([from, to]: Ages, ageYears: number): string {
  return ageYears < from || ageYears > to ? `, made on people of ${from} to ${to} years` : '';
}

/** Upper age of the class, level and slope on log10 of the sum. Durnin JV, Womersley J. Br J Nutr 1974;32:77–97. */
const classes: Readonly<Record<Sex, readonly (readonly [upTo: number, level: number, slope: number])[]>> = {
  male: [
    [19, 1.162, 0.063],
    [29, 1.1631, 0.0632],
    [39, 1.1422, 0.0544],
    [49, 1.162, 0.07],
    [Number.POSITIVE_INFINITY, 1.1715, 0.0779],
  ],
  female: [
    [19, 1.1549, 0.0678],
    [29, 1.1599, 0.0717],
    [39, 1.1423, 0.0632],
    [49, 1.1333, 0.0612],
    [Number.POSITIVE_INFINITY, 1.1339, 0.0645],
  ],
};

/** 209 men and 272 women; same source, the limits by sex second-hand. */
const foldAges: Readonly<Record<Sex, Ages>> = { male: [17, 72], female: [16, 68] };

/**
 * Body fat from biceps, triceps, subscapular and suprailiac skinfolds, their sum in mm. Siri's equation. Error 5 (men)
 * and 3.5 (women) % of body mass (from memory). The coefficients are second-hand.
 */
export function durninWomersleyFat(sex: Sex, sumMm: number, ageYears: number): FatFinding {
  const [, level, slope] = classes[sex].find(([upTo]) => ageYears <= upTo) ?? [0, Number.NaN, Number.NaN];
  return {
    percent: siriPercent(level - slope * Math.log10(sumMm)),
    errorPercent: sex === 'male' ? 5 : 3.5,
    method: `4 skinfolds, Durnin and Womersley 1974${beyond(foldAges[sex], ageYears)}`,
  };
}
