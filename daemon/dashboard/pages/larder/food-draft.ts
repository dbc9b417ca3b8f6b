import type { FoodState } from '@platewright/core/records/food.ts';
import { foodSchema } from '@platewright/core/records/food.ts';
import type { FieldsOf, Food } from '@platewright/core/records/kinds.ts';
import { type Nutrients, nutrientsSchema } from '@platewright/core/records/nutrients.ts';
import { hasTwoWays, parseAmountIn, parseDecimalIn } from '@platewright/core/units/decimal.ts';
import { type EnergyUnit, kJFromKcal, parseEnergy } from '@platewright/core/units/energy.ts';
import { plain } from '../../athlete-form/draft.ts';

type NutrientName = keyof Nutrients;

/** A food as typed from its label: figures for `per` grams. */
export interface FoodDraft {
  name: string;
  aliases: string;
  state: FoodState;
  per: string;
  nutrients: Record<NutrientName, string>;
  portions: readonly { name: string; grams: string }[];
  carbohydrate: 'quick' | 'complex' | 'unsaid';
}

export const nutrientNames: readonly { key: NutrientName; label: string; unit: string; needed: boolean }[] = [
  { key: 'energyKcal', label: 'Energy', unit: 'kcal', needed: true },
  { key: 'proteinG', label: 'Protein', unit: 'g', needed: true },
  { key: 'carbohydrateG', label: 'Carbohydrate', unit: 'g', needed: true },
  { key: 'fatG', label: 'Fat', unit: 'g', needed: true },
  { key: 'fibreG', label: 'Fibre', unit: 'g', needed: false },
  { key: 'sugarsG', label: 'Sugars', unit: 'g', needed: false },
  { key: 'saturatesG', label: 'Saturates', unit: 'g', needed: false },
  { key: 'linoleicG', label: 'Linoleic acid', unit: 'g', needed: false },
  { key: 'alphaLinolenicG', label: 'Alpha-linolenic acid', unit: 'g', needed: false },
  { key: 'epaDhaG', label: 'EPA and DHA', unit: 'g', needed: false },
  { key: 'leucineG', label: 'Leucine', unit: 'g', needed: false },
  { key: 'sodiumMg', label: 'Sodium', unit: 'mg', needed: false },
  { key: 'alcoholG', label: 'Alcohol', unit: 'g', needed: false },
];

/** The draft of a food to change, or an empty one. */
export function draftOfFood(food: Food | undefined, energyUnit: EnergyUnit): FoodDraft {
  const text = (key: NutrientName): string => {
    const value = food?.per100[key];
    if (value === undefined) return '';
    return plain(key === 'energyKcal' && energyUnit === 'kJ' ? kJFromKcal(value) : value, 2);
  };
  return {
    name: food?.name ?? '',
    aliases: food?.aliases.join(', ') ?? '',
    state: food?.state ?? 'as eaten',
    per: '100',
    nutrients: {
      energyKcal: text('energyKcal'),
      proteinG: text('proteinG'),
      carbohydrateG: text('carbohydrateG'),
      fatG: text('fatG'),
      fibreG: text('fibreG'),
      sugarsG: text('sugarsG'),
      saturatesG: text('saturatesG'),
      linoleicG: text('linoleicG'),
      alphaLinolenicG: text('alphaLinolenicG'),
      epaDhaG: text('epaDhaG'),
      leucineG: text('leucineG'),
      sodiumMg: text('sodiumMg'),
      alcoholG: text('alcoholG'),
    },
    portions: food?.portions.map(({ name, grams }) => ({ name, grams: plain(grams, 2) })) ?? [],
    carbohydrate: food?.carbohydrate ?? 'unsaid',
  };
}

/**
 * One figure of a label as the record keeps it, for 100 g where nothing can be read of what it is for; undefined when it can't be
 * read, NaN when it is more than 100 g of any food hold.
 */
export function readFigure(draft: FoodDraft, key: NutrientName, energyUnit: EnergyUnit): number | undefined {
  const value = figureOf(key, draft.nutrients[key], energyUnit);
  if (value === undefined || value < 0) return undefined;
  const per100 = (value * 100) / (readPer(draft) ?? 100);
  return nutrientsSchema.shape[key].safeParse(per100).success ? per100 : Number.NaN;
}

function figureOf(key: NutrientName, text: string, energyUnit: EnergyUnit): number | undefined {
  if (key === 'energyKcal') return hasTwoWays(text) ? undefined : parseEnergy(text, energyUnit);
  return key.endsWith('Mg') ? parseAmountIn(text, 'mg') : parseDecimalIn(text, 'g');
}

/** The grams that a label's figures are for; undefined when they can't be read or are none. */
export function readPer({ per }: FoodDraft): number | undefined {
  const grams = parseAmountIn(per, 'g');
  return grams !== undefined && grams > 0 ? grams : undefined;
}

/** The nutrients per 100 g as far as they can be read; null while one that is needed is missing. */
export function readNutrients(draft: FoodDraft, energyUnit: EnergyUnit): Nutrients | null {
  if (readPer(draft) === undefined) return null;
  const read: Partial<Nutrients> = {};
  for (const { key } of nutrientNames) {
    if (draft.nutrients[key].trim() === '') continue;
    const value = readFigure(draft, key, energyUnit);
    if (value === undefined || Number.isNaN(value)) return null;
    read[key] = value;
  }
  const { energyKcal, proteinG, carbohydrateG, fatG } = read;
  if (
    energyKcal === undefined ||
    proteinG === undefined ||
    carbohydrateG === undefined ||
    fatG === undefined
  ) {
    return null;
  }
  return { ...read, energyKcal, proteinG, carbohydrateG, fatG };
}

/**
 * The fields of the food, or null when something is missing or can't be read. Figures that nobody touched since they were
 * drafted from `original` stay as they are: the draft shows two decimals of them.
 */
export function readFood(draft: FoodDraft, energyUnit: EnergyUnit, original?: Food): FieldsOf<'food'> | null {
  const drafted = original && draftOfFood(original, energyUnit);
  const per100 =
    drafted && hasSameFigures(draft, drafted) ? original.per100 : readNutrients(draft, energyUnit);
  if (!per100) return null;
  const parsed = foodSchema.safeParse({
    name: draft.name,
    aliases: draft.aliases
      .split(',')
      .map((alias) => alias.trim().toLowerCase())
      .filter(Boolean),
    state: draft.state,
    per100,
    portions: draft.portions
      .filter(({ name, grams }) => name.trim() || grams.trim())
      .map(({ name, grams }) => ({ name: name.trim(), grams: parseAmountIn(grams, 'g') })),
    ...(draft.carbohydrate !== 'unsaid' && { carbohydrate: draft.carbohydrate }),
  });
  return parsed.success ? parsed.data : null;
}

function hasSameFigures(a: FoodDraft, b: FoodDraft): boolean {
  return a.per === b.per && nutrientNames.every(({ key }) => a.nutrients[key] === b.nutrients[key]);
}
