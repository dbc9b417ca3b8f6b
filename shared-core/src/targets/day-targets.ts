import type { KindOfDay } from '../season/kind-of-day.ts';
import type { PlanRecords } from './asked.ts';
import { cautionsFor } from './cautions.ts';
import { figuresOn } from './figures.ts';
import { gaveWay } from './gave-way.ts';
import { reasonsFor } from './reasons.ts';
import type { DayTargets } from './types.ts';

/**
 * What a date asks for, in grams and kcal a day, with the reasons, the rules that gave way and the cautions. `kind` is
 * the date's own kind of day unless another one is asked for. Works on a draft of a set-up as well as on records.
 */
export function dayTargets(plan: PlanRecords, date: string, kind?: KindOfDay): DayTargets {
  const figures = figuresOn(plan, date, kind);
  return {
    ...figures.numbers,
    gaveWay: gaveWay(figures),
    cautions: cautionsFor(figures),
    reasons: reasonsFor(figures),
  };
}
