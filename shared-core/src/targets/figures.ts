import type { Aim } from '../call/input.ts';
import type { FieldsOf } from '../records/kinds.ts';
import { type KindOfDay, kindOfDay } from '../season/kind-of-day.ts';
import { aimOf } from '../season/phase-in-force.ts';
import { askedOn, type PlanRecords } from './asked.ts';
import { essentialFats } from './fat.ts';
import type { MarkInForce } from './mark.ts';
import { splitMeals } from './meal-split.ts';
import { mealTimes } from './meal-times.ts';
import { personOn } from './person.ts';
import type { DayTargets } from './types.ts';

/** The numbers of a date before anything is said about them, with what they were made from. */
export interface Figures {
  athlete: FieldsOf<'athlete'>;
  date: string;
  kind: KindOfDay;
  aim: Aim;
  mark: MarkInForce;
  numbers: Omit<DayTargets, 'gaveWay' | 'cautions' | 'reasons'>;
}

/** Targets of a date as numbers. `kind` is the date's own unless another one is asked for. */
export function figuresOn(
  plan: PlanRecords,
  date: string,
  kind: KindOfDay = kindOfDay(plan.athlete.training, date),
): Figures {
  const { athlete } = plan;
  const { bodyMassKg, protein, band, mark, fat, energyKcal, phase } = askedOn(plan, date);
  const meals = splitMeals(mealTimes(athlete, kind), {
    proteinG: protein.quotaG,
    carbohydrateG: mark.markG,
    fatG: fat.targetG,
  });
  return {
    athlete,
    date,
    kind,
    aim: aimOf(phase),
    mark,
    numbers: {
      bodyMassKg,
      protein,
      carbohydrate: {
        bandLowG: band.lowG,
        bandHighG: band.highG,
        markG: mark.markG,
        quickG: meals.reduce((sum, meal) => sum + meal.quickG, 0),
      },
      fat: { ...fat, ...essentialFats(personOn(athlete, date)) },
      energyKcal,
      meals,
    },
  };
}
