import { foodStateSchema } from '../../records/food.ts';
import type { Nutrients } from '../../records/nutrients.ts';
import type { StarterFood } from './types.ts';

const carbohydrates = ['quick', 'complex'] as const;
const optionalNutrients = [
  'fibreG',
  'sugarsG',
  'saturatesG',
  'linoleicG',
  'alphaLinolenicG',
  'epaDhaG',
  'leucineG',
  'sodiumMg',
  'alcoholG',
] as const;

/**
 * Reads a food table, one food a line under a line of heads, columns between bars: NDB number, name, state and kind of
 * carbohydrate, nutrients per 100 g, portions in g, other words for it. `-` is not reported.
 *
 * The figures are facts from the USDA National Nutrient Database for Standard Reference, Release 28 (2015), masses to
 * 0.01 g: energy in kcal (specific Atwater factors), protein P, total carbohydrate C by difference, fat F, fibre, sugars,
 * saturates, linoleic acid LA (n-6 alone where the table tells it from other 18:2), alpha-linolenic acid ALA (likewise
 * n-3), EPA and DHA together, leucine, sodium in mg, alcohol. Which carbohydrate is quick, usable around training, and
 * which complex is common practice, no source.
 */
export function readTable(text: string): StarterFood[] {
  return text.trim().split('\n').slice(1).map(readRow);
}

function readRow(row: string): StarterFood {
  const [ndb = '', name = '', kind = '', nutrients = '', portions = '', aliases = ''] = row
    .split('|')
    .map((cell) => cell.trim());
  const [stateText, carbohydrateText] = kind.split(', ');
  const state = foodStateSchema.options.find((known) => known === stateText);
  if (!state) throw new Error(`No such state of a food: ${row}`);
  const carbohydrate = carbohydrates.find((known) => known === carbohydrateText);
  return {
    id: `starter-${ndb === '-' ? name.toLowerCase().replaceAll(' ', '-') : ndb}`,
    ...(ndb === '-' ? {} : { ndb }),
    name,
    aliases: list(aliases),
    state,
    per100: readNutrients(nutrients),
    portions: list(portions).map(readPortion),
    ...(carbohydrate ? { carbohydrate } : {}),
  };
}

function readNutrients(text: string): Nutrients {
  const [energyKcal, proteinG, carbohydrateG, fatG, ...others] = text.split(/ +/);
  const per100: Nutrients = {
    energyKcal: Number(energyKcal),
    proteinG: Number(proteinG),
    carbohydrateG: Number(carbohydrateG),
    fatG: Number(fatG),
  };
  optionalNutrients.forEach((key, column) => {
    const value = others[column];
    if (value !== undefined && value !== '-') per100[key] = Number(value);
  });
  return per100;
}

function readPortion(text: string): { name: string; grams: number } {
  const cut = text.lastIndexOf(' ');
  return { name: text.slice(0, cut), grams: Number(text.slice(cut + 1)) };
}

function list(text: string): string[] {
  return text === '' ? [] : text.split(', ');
}
