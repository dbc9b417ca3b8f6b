import { type FatFinding, siriPercent } from './fat-finding.ts';

/** Circumferences in cm. The waist of men is taken at the navel, of women at its narrowest; hip is for women only. */
export type Circumferences =
  | { sex: 'male'; heightCm: number; neckCm: number; waistCm: number }
  | { sex: 'female'; heightCm: number; neckCm: number; waistCm: number; hipCm: number };

/**
 * Body fat from the tape. Hodgdon JA, Beckett MB. Naval Health Research Center reports 84-11 (men) and 84-29 (women),
 * 1984: density from circumferences in centimetres, then Siri; standard error 3.5 (men) and 3.7 (women) % of body mass.
 * Third and later digits of the coefficients second-hand. Null when the readings cannot be a body: a waist that is not larger than
 * the neck, or fat that comes out at 0 % or less, or at 70 % or more.
 */
export function tapeFat(tape: Circumferences): FatFinding | null {
  const around = tape.waistCm - tape.neckCm + (tape.sex === 'female' ? tape.hipCm : 0);
  if (!(around > 0 && tape.heightCm > 0)) return null;
  const density =
    tape.sex === 'male'
      ? 1.0324 - 0.19077 * Math.log10(around) + 0.15456 * Math.log10(tape.heightCm)
      : 1.29579 - 0.35004 * Math.log10(around) + 0.221 * Math.log10(tape.heightCm);
  const percent = siriPercent(density);
  if (!(percent > 0 && percent < 70)) return null;
  return {
    percent,
    errorPercent: tape.sex === 'male' ? 3.5 : 3.7,
    method: 'tape, Hodgdon and Beckett 1984',
  };
}
