import { gramsPer } from '../../units/mass.ts';
import type { millilitresPer } from '../../units/volume.ts';

export type MassUnit = keyof typeof gramsPer;
export type VolumeUnit = keyof typeof millilitresPer;
export type Unit = MassUnit | VolumeUnit;

const spellings: readonly (readonly [Unit, string])[] = [
  ['g', 'g gr gm gms gram grams'],
  ['kg', 'kg kilo kilos kilogram kilograms'],
  ['oz', 'oz ounce ounces'],
  ['lb', 'lb lbs pound pounds'],
  ['mL', 'ml millilitre millilitres milliliter milliliters'],
  ['cL', 'cl'],
  ['dL', 'dl'],
  ['L', 'l litre litres liter liters'],
  ['tsp', 'tsp tsps teaspoon teaspoons'],
  ['tbsp', 'tbsp tbsps tbs tablespoon tablespoons'],
  ['cup', 'cup cups'],
  ['fl oz', 'floz fluidounce fluidounces'],
];

const unitOf: ReadonlyMap<string, Unit> = new Map(
  spellings.flatMap(([unit, list]) => list.split(' ').map((spelling) => [spelling, unit] as const)),
);

/** The unit that a list of words begins with, and how many of the words it takes. */
export function leadingUnit(list: readonly string[]): { unit: Unit; length: number } | undefined {
  const [first = '', second = ''] = list.slice(0, 2).map((word) => word.toLowerCase().replace(/[.)]$/, ''));
  const length = first === 'fl' || first === 'fluid' ? 2 : 1;
  const unit = unitOf.get(length === 2 ? first + second : first);
  return unit && { unit, length };
}

export function isMass(unit: Unit): unit is MassUnit {
  return Object.hasOwn(gramsPer, unit);
}
