import { habitsOf, type Suggestion, suggestFoods } from '@platewright/core/foods/ranking.ts';
import { completionAt } from '@platewright/core/foods/typed-line/complete.ts';
import { larderWith } from '@platewright/core/foods/typed-line/read-line.ts';
import type { StandingMeal } from '@platewright/core/records/kinds.ts';
import { occasionOf } from '@platewright/core/views/habits.ts';
import type { DayView } from '@platewright/core/views/types.ts';
import type { LarderFood } from '../../replica/larder.ts';
import type { Habits } from '../state/read-habits.ts';
import type { DayState } from '../state/read-popup.ts';
import type { FoodLarder } from './read-line.ts';

/** What the list under the typed line offers. */
export type Option =
  | { kind: 'standing'; meal: StandingMeal; digit: number }
  | SuggestedOption
  | { kind: 'food'; food: LarderFood };

interface SuggestedOption {
  kind: 'suggestion';
  food: LarderFood;
  suggestion: Suggestion;
}

const MOST_STANDING = 9;
const MOST_SUGGESTIONS = 6;
const MOST_FOODS = 6;

/** The typed line's larder and habits at one meal of one date. */
export interface Table {
  larder: FoodLarder;
  suggestions: readonly SuggestedOption[];
  standingMeals: readonly StandingMeal[];
}

/** Lays out what is known for a meal: it changes with the meal, the date and the entries, not with each key. */
export function layTable(
  habits: Habits,
  { day, athlete }: Pick<DayState, 'day' | 'athlete'>,
  meal: number,
): Table {
  const occasion = occasionOf(athlete.training, day.date, meal);
  const foods = new Map(habits.index.foods.map((food) => [food.id, food]));
  const suggestions = suggestFoods(habits.recent, occasion, leftFor(day, meal), MOST_SUGGESTIONS).flatMap(
    (suggestion): SuggestedOption[] => {
      const food = foods.get(suggestion.food);
      return food === undefined ? [] : [{ kind: 'suggestion', suggestion, food }];
    },
  );
  return {
    larder: larderWith(habits.index, habitsOf(habits.recent, occasion)),
    suggestions,
    standingMeals: habits.standingMeals.slice(0, MOST_STANDING),
  };
}

function leftFor(day: DayView, meal: number): DayView['meals'][number]['left'] | null {
  return day.meals[meal - 1]?.left ?? null;
}

/**
 * What to offer at a caret: foods that go on with what is typed, or else standing meals and suggestions. `inLine` are
 * the foods the line already has.
 */
export function optionsAt(line: string, caret: number, table: Table, inLine: ReadonlySet<string>): Option[] {
  const { item, foods } = completionAt(line, caret, table.larder);
  if (item.text !== '') return foods.slice(0, MOST_FOODS).map((food) => ({ kind: 'food', food }));
  if (line.trim() === '') {
    const standing = table.standingMeals.map((meal, i): Option => ({ kind: 'standing', meal, digit: i + 1 }));
    return [...standing, ...table.suggestions];
  }
  // Between two items nothing is offered; at the end of the line the next one is.
  if (caret < line.trimEnd().length) return [];
  return table.suggestions.filter((option) => !inLine.has(option.food.id));
}
