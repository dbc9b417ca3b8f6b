import { sumNutrients } from '../foods/nutrients.ts';
import type { Entry } from '../records/kinds.ts';
import { kindOfDay } from '../season/kind-of-day.ts';
import { aimOf, phaseInForce } from '../season/phase-in-force.ts';
import { dayTargets } from '../targets/day-targets.ts';
import { unitsOf } from '../units/reader.ts';
import { carbohydrateBeam, fatBeam, proteinBeam } from './beams.ts';
import { macrosOf, sumMacros } from './macros.ts';
import { mealsLeft } from './meals-left.ts';
import { nextMeal } from './next-meal.ts';
import { byInstant } from './order.ts';
import type { SeasonRecords } from './season-records.ts';
import type { DayView, EntryView } from './types.ts';

/**
 * One date: targets, beams, meals with what is left, and the meal to log next. `nowMinutes` is the local clock in minutes
 * since the date's midnight, Infinity for a past date, negative for a coming one. Of entries and days only those of
 * `date` are looked at, so nothing else need be loaded; phases and calls are needed whole.
 */
export function dayView(
  records: Pick<SeasonRecords, 'athlete' | 'phases' | 'calls' | 'entries' | 'days'>,
  date: string,
  nowMinutes: number,
): DayView {
  const { athlete } = records;
  const targets = dayTargets(records, date);
  const entries = records.entries.filter((entry) => entry.date === date).sort(byInstant);
  const day = sumNutrients(entries);
  const meals = targets.meals.map((plan) => {
    const own = entries.filter((entry) => mealOf(entry, targets.meals.length) === plan.meal);
    return { plan, eaten: sumMacros(own), entries: own.map(entryView), logged: own.length > 0 };
  });
  const next = nextMeal(meals, nowMinutes, athlete);
  const left = mealsLeft(meals, next);
  const { fibreG, sugarsG, linoleicG, alphaLinolenicG, epaDhaG, leucineG, sodiumMg } = day.known;
  const eaten = {
    ...macrosOf(day),
    ...{ fibreG, sugarsG, linoleicG, alphaLinolenicG, epaDhaG, leucineG, sodiumMg },
    partly: day.partly,
  };
  return {
    athlete: athlete.id,
    date,
    units: unitsOf(athlete),
    kindOfDay: kindOfDay(athlete.training, date),
    phase: aimOf(phaseInForce(records.phases, date)).phase,
    targets,
    eaten,
    beams: {
      protein: proteinBeam(
        targets,
        eaten.proteinG,
        meals.map((meal) => meal.eaten),
      ),
      carbohydrate: carbohydrateBeam(targets, eaten.carbohydrateG),
      fat: fatBeam(targets, eaten.fatG),
    },
    meals: meals.map(({ plan, eaten, entries }, i) => ({
      ...plan,
      entries,
      eaten,
      left: left[i] ?? { proteinG: 0, carbohydrateG: 0, fatG: 0 },
    })),
    nextMeal: next,
    complete: records.days.find((log) => log.date === date)?.complete ?? null,
    cautions: targets.cautions,
  };
}

/** An entry at a meal that the plan no longer has, because the athlete eats fewer meals now, shows at the last one. */
function mealOf(entry: Entry, meals: number): number {
  return Math.min(entry.meal, meals);
}

function entryView(entry: Entry): EntryView {
  const { id, food, name, grams, amount } = entry;
  return { id, food, name, grams, amount: amount ?? null, ...sumMacros([entry]) };
}
