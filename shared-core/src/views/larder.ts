import { checkLabel } from '../foods/label-check.ts';
import type { Food, StandingMeal } from '../records/kinds.ts';
import type { EnergyUnit } from '../units/energy.ts';
import { unitsOf } from '../units/reader.ts';
import type { LarderFood, LarderView, StandingMealView } from './larder-types.ts';
import { sumMacros } from './macros.ts';
import type { SeasonRecords } from './season-records.ts';

/** The athlete's food table by name, each food with its label check, and the standing meals with their sums. */
export function larderView(records: Pick<SeasonRecords, 'athlete' | 'foods' | 'standingMeals'>): LarderView {
  const { foods } = records;
  const byId = new Map(foods.map((food) => [food.id, food]));
  return {
    athlete: records.athlete.id,
    units: unitsOf(records.athlete),
    foods: foods.toSorted(byName).map((food) => larderFood(food, records.athlete.energyUnit)),
    standingMeals: records.standingMeals.toSorted(byName).map((meal) => standingMealView(meal, byId)),
  };
}

function byName(a: { name: string; id: string }, b: { name: string; id: string }): number {
  return a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1);
}

function larderFood(food: Food, energyUnit: EnergyUnit): LarderFood {
  const check = checkLabel(food, energyUnit);
  return {
    food,
    own: !food.id.startsWith('starter-'),
    hidden: food.hidden === true,
    labelAgrees: check.verdict !== 'disagrees',
    labelWords: check.words,
  };
}

function standingMealView(meal: StandingMeal, foods: ReadonlyMap<string, Food>): StandingMealView {
  const items = meal.items.map(({ food, grams }) => ({ food: foods.get(food), id: food, grams }));
  return {
    id: meal.id,
    name: meal.name,
    items: items.map(({ food, id, grams }) => ({ food: id, name: food?.name ?? null, grams })),
    sums: sumMacros(
      items.flatMap(({ food, grams }) => (food === undefined ? [] : [{ per100: food.per100, grams }])),
    ),
  };
}
