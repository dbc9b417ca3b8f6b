import type { CaliperMethod, FoldSite } from '../records/body.ts';
import { durninWomersleyFat, jacksonPollockFat } from './calipers-fat.ts';
import type { FatFinding, Sex } from './fat-finding.ts';

const SEVEN: readonly FoldSite[] = [
  ...(['chest', 'axilla', 'triceps', 'subscapular'] as const),
  ...(['abdomen', 'suprailiac', 'thigh'] as const),
];
const FOUR: readonly FoldSite[] = ['biceps', 'triceps', 'subscapular', 'suprailiac'];

/** The skinfolds that a method asks for, in the order in which they are taken. Sources as in calipers-fat.ts. */
export function foldSites(sex: Sex, method: CaliperMethod): readonly FoldSite[] {
  if (method === 'durnin-womersley') return FOUR;
  if (method === 'jackson-pollock 7') return SEVEN;
  return sex === 'male' ? ['chest', 'abdomen', 'thigh'] : ['triceps', 'suprailiac', 'thigh'];
}

/** Skinfolds in mm, by site. */
type Folds = { readonly [S in FoldSite]?: number | undefined };

/** Sum in mm of the skinfolds that a method asks for; null while one is missing. */
export function foldSum(sex: Sex, method: CaliperMethod, folds: Folds): number | null {
  let sum = 0;
  for (const site of foldSites(sex, method)) {
    const mm = folds[site];
    if (mm === undefined) return null;
    sum += mm;
  }
  return sum;
}

/** Body fat from skinfolds by a published method; null while one is missing, or when they can't be a body's. */
export function calipersFat(
  person: { sex: Sex; ageYears: number },
  method: CaliperMethod,
  folds: Folds,
): FatFinding | null {
  const { sex, ageYears } = person;
  const sum = foldSum(sex, method, folds);
  if (sum === null) return null;
  const found =
    method === 'durnin-womersley'
      ? durninWomersleyFat(sex, sum, ageYears)
      : jacksonPollockFat(sex, method === 'jackson-pollock 7' ? 7 : 3, sum, ageYears);
  return found.percent > 0 && found.percent < 70 ? found : null;
}
