import type { Portion } from '../../records/food.ts';
import { mostEntryG } from '../../records/limits.ts';
import { gramsPer } from '../../units/mass.ts';
import { roundTo } from '../../units/round.ts';
import { formatNumber } from './number.ts';
import { gramsPerVolume, pieceOf } from './portions.ts';
import { isMass, type Unit } from './units.ts';

/** What an amount is a number of. A bare count may be pieces or grams; of what is typed in the plural, rather pieces. */
export type Measure =
  | { kind: 'unit'; unit: Unit }
  | { kind: 'portion'; portion: Portion }
  | { kind: 'count'; plural: boolean };

/** Grams, and the amount as it is shown when grams alone would lose it: `2 large`. */
export interface Weighed {
  grams: number;
  amount: string | null;
}

/** A bare number up to this counts pieces, a larger one is grams (common practice, no source). */
const mostPieces = 12;
/** So many in the plural may still be pieces, `14 egg whites`, unless one weighs less (common practice, no source). */
const mostDoubted = 36;
/** A whole number below this, of what has no piece, is hardly grams: `1 steak` (common practice, no source). */
const fewestGrams = 5;

/** Weighs an amount of a food, to the milligram; or says what is wrong with it. */
export function weigh(
  food: { name: string; portions: readonly Portion[] },
  value: number,
  measure: Measure,
): Weighed | string {
  if (Number.isNaN(value)) return 'A comma before three digits can be read in two ways: type 1500 or 1.5.';
  const doubt = measure.kind === 'count' && doubtOf(food, value, measure.plural);
  if (doubt) return doubt;
  const one = oneOf(food.portions, value, measure);
  if (one.grams === undefined) {
    return `No volume is known for ${food.name}: type grams, or give it a portion such as cup in the larder.`;
  }
  const grams = roundTo(value * one.grams, 0.001);
  if (!(grams > 0)) return 'The amount is nothing: type a number above 0.';
  if (grams > mostEntryG)
    return `That is more than ${mostEntryG / gramsPer.kg} kg: check the number and the unit.`;
  return { grams, amount: one.name === 'g' ? null : `${formatNumber(value)} ${one.name}` };
}

/** What to type instead of a bare number that may be grams or pieces; empty when it is clear. */
function doubtOf(
  { name, portions }: { name: string; portions: readonly Portion[] },
  value: number,
  plural: boolean,
): string {
  const piece = pieceOf(portions);
  const grams = `${formatNumber(value)} g`;
  if (piece && plural && value > mostPieces && value <= mostDoubted && value < piece.grams) {
    const pieces = `${formatNumber(value)} ${piece.name}`;
    return `${formatNumber(value)} of ${name} can be grams or pieces: type ${grams} or ${pieces}.`;
  }
  if (!piece && value > 0 && value < fewestGrams && Number.isInteger(value)) {
    return `${name} is not counted in pieces: type ${grams}, or how much it was.`;
  }
  return '';
}

function oneOf(
  portions: readonly Portion[],
  value: number,
  measure: Measure,
): { name: string; grams: number | undefined } {
  switch (measure.kind) {
    case 'portion':
      return measure.portion;
    case 'unit': {
      const { unit } = measure;
      return { name: unit, grams: isMass(unit) ? gramsPer[unit] : gramsPerVolume(portions, unit) };
    }
    case 'count': {
      const piece = pieceOf(portions);
      // Five of creatine are grams though its scoop holds 5 g: a number above the grams of one piece counts no pieces.
      const counted = piece && value <= mostPieces && (measure.plural || value < piece.grams);
      return counted ? piece : { name: 'g', grams: 1 };
    }
  }
}
