import type { Food } from '../records/kinds.ts';
import type { Units } from '../units/reader.ts';
import type { Macros } from './types.ts';

/** What the Larder page shows: the foods by name, and the standing meals with their sums. */
export interface LarderView {
  athlete: string;
  units: Units;
  /** By name; hidden ones included and marked. */
  foods: readonly LarderFood[];
  standingMeals: readonly StandingMealView[];
}

export interface LarderFood {
  food: Food;
  /** Of the athlete's own making, not from the starter table. */
  own: boolean;
  hidden: boolean;
  /** Whether declared energy and macronutrients agree within the published tolerances. */
  labelAgrees: boolean;
  /** What disagrees and by how much; empty when it agrees. */
  labelWords: string;
}

export interface StandingMealView {
  id: string;
  name: string;
  /** `name` is null when the food is no longer in the larder; it then counts nothing. */
  items: readonly { food: string; name: string | null; grams: number }[];
  sums: Macros;
}
