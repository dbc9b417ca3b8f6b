import type { Portion } from '../../records/food.ts';
import { mostEntryG } from '../../records/limits.ts';
import { gramsPer } from '../../units/mass.ts';
import { roundTo } from '../../units/round.ts';
import { millilitresPer } from '../../units/volume.ts';
import { type Amount, formatNumber } from './number.ts';
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
/** So many in the plural may still be pieces, `14 egg whites` (common practice, no source). */
const mostDoubted = 36;
/** Grams of a piece below which it makes little difference, as for 30 almonds (common practice, no source). */
const leastDoubtedG = 2;
/** A number below this, of what has no piece, is hardly grams: `1 steak`, `half rice` (common practice, no source). */
const fewestGrams = 5;

/** Weighs an amount of a food, to the milligram; or says what is wrong with it. */
export function weigh(
  food: { name: string; portions: readonly Portion[] },
  value: number,
  measure: Measure,
): Weighed | string {
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

/** The same of an amount as it was typed: where it may mean another one that can be eaten as well, it asks. */
export function weighTyped(
  food: { name: string; portions: readonly Portion[] },
  { value, other }: Amount,
  measure: Measure,
): Weighed | string {
  if (value !== other && typeof weigh(food, other, measure) !== 'string') {
    return `The amount of ${food.name} can be read in two ways: type ${formatNumber(other)} or ${formatNumber(value)}.`;
  }
  return doubtOf(food, value, measure) || weigh(food, value, measure);
}

/** What to type instead of an amount that may be grams or pieces, or litres or pieces; empty when it is clear. */
function doubtOf(
  { name, portions }: { name: string; portions: readonly Portion[] },
  value: number,
  measure: Measure,
): string {
  if (measure.kind === 'unit') {
    const isSize =
      measure.unit === 'L' && Number.isInteger(value) && portions.some((portion) => portion.name === 'large');
    return isSize
      ? `${value} L of ${name} can be litres or large: type ${value * millilitresPer.L} mL or ${value} large.`
      : '';
  }
  if (measure.kind === 'portion') return '';
  const piece = pieceOf(portions);
  const isPlural = measure.plural && piece && piece.grams >= leastDoubtedG;
  if (isPlural && value > mostPieces && value <= mostDoubted) {
    const typed = formatNumber(value);
    return `${typed} of ${name} can be grams or pieces: type ${typed} g or ${typed} ${piece.name}.`;
  }
  if (!piece && value > 0 && value < fewestGrams) {
    const [grams = '', ...others] = ['g', ...portions.map((portion) => portion.name)].map(
      (unit) => `${formatNumber(value)} ${unit}`,
    );
    const instead =
      others.length > 0 ? `one of ${[grams, ...others].join(', ')}` : `${grams}, or how many grams it was`;
    return `${name} is not counted in pieces: type ${instead}.`;
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
