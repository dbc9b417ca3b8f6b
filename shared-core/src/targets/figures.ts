import type { Aim } from '../call/input.ts';
import { energyKcal } from '../foods/atwater.ts';
import type { FieldsOf, Phase, WeeklyCallRecord } from '../records/kinds.ts';
import { type KindOfDay, kindOfDay } from '../season/kind-of-day.ts';
import { aimOf, phaseInForce } from '../season/phase-in-force.ts';
import { roundTo } from '../units/round.ts';
import { bodyMassInForce } from './body-mass.ts';
import { carbohydrateBand } from './carbohydrate.ts';
import { essentialFats, fatFloor } from './fat.ts';
import { type MarkInForce, markInForce } from './mark.ts';
import { splitMeals } from './meal-split.ts';
import { mealTimes } from './meal-times.ts';
import { proteinTargets } from './protein.ts';
import type { DayTargets } from './types.ts';

/** The records that targets follow from; a form shows targets for a draft of them. */
export interface PlanRecords {
  athlete: FieldsOf<'athlete'>;
  phases: readonly Phase[];
  calls: readonly WeeklyCallRecord[];
}

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
  const { athlete, calls } = plan;
  const phase = phaseInForce(plan.phases, date);
  const bodyMassKg = bodyMassInForce(athlete.startMassKg, calls, date);
  const protein = proteinTargets(bodyMassKg, athlete.proteinGPerKg, athlete.meals);
  const band = carbohydrateBand(protein.quotaG);
  const mark = markInForce(calls, phase, protein.quotaG, date);
  const floor = fatFloor(bodyMassKg, protein.quotaG, mark.markG);
  const targetG = Math.max(roundTo(athlete.fatGPerKg * bodyMassKg, 1), floor.floorG);
  const grams = { proteinG: protein.quotaG, carbohydrateG: mark.markG, fatG: targetG };
  const meals = splitMeals(mealTimes(athlete, kind), grams);
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
      fat: { targetG, ...floor, ...essentialFats(athlete.sex) },
      energyKcal: energyKcal(grams),
      meals,
    },
  };
}
