import type { Portion } from '../../records/food.ts';
import { millilitresPer } from '../../units/volume.ts';
import { stems, words } from '../search/words.ts';
import { isMass, leadingUnit, type VolumeUnit } from './units.ts';

/** The portion that words name, whole or by how its name begins: `slice` for `slice, large`. */
export function portionNamed(portions: readonly Portion[], name: string): Portion | undefined {
  const typed = stems(name);
  const begun = portions.filter((portion) => {
    const own = stems(portion.name);
    return typed.length > 0 && typed.every((word, i) => own[i] === word);
  });
  return begun.find((portion) => stems(portion.name).length === typed.length) ?? begun[0];
}

/** What a food is counted in when a bare number is typed: its first portion that is no unit, `large` of an egg. */
export function pieceOf(portions: readonly Portion[]): Portion | undefined {
  return portions.find(({ name }) => {
    const list = words(name);
    return list.length > 0 && !list.some((_, i) => leadingUnit(list.slice(i)));
  });
}

/**
 * Grams in one unit of volume of a food: from its own portion of that unit, or else from its density, which is taken
 * from its largest portion that has a volume because that was rounded least. US customary measures, as in the household
 * weights of the USDA tables. Undefined when no portion has a volume.
 */
export function gramsPerVolume(portions: readonly Portion[], unit: VolumeUnit): number | undefined {
  const known = portions.flatMap(volumeOf);
  const own = known.filter((volume) => volume.unit === unit);
  const same = own.find(({ plain }) => plain) ?? own[0];
  if (same) return same.grams / same.count;
  const millilitres = (volume: Volume) => volume.count * millilitresPer[volume.unit];
  const [largest] = known.sort((a, b) => millilitres(b) - millilitres(a));
  return largest && (largest.grams / millilitres(largest)) * millilitresPer[unit];
}

interface Volume {
  unit: VolumeUnit;
  count: number;
  grams: number;
  /** `cup`, not `cup, chopped`. */
  plain: boolean;
}

function volumeOf({ name, grams }: Portion): Volume[] {
  const list = words(name);
  const count = list[0] === 'half' ? 0.5 : Number(list[0]);
  const rest = count > 0 ? list.slice(1) : list;
  const leading = leadingUnit(rest);
  if (!leading || isMass(leading.unit)) return [];
  return [{ unit: leading.unit, count: count > 0 ? count : 1, grams, plain: leading.length === rest.length }];
}
