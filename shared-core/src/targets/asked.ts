import { energyKcal } from '../foods/atwater.ts';
import type { FieldsOf, Phase, WeeklyCallRecord } from '../records/kinds.ts';
import { phaseInForce } from '../season/phase-in-force.ts';
import { bodyMassInForce } from './body-mass.ts';
import { carbohydrateBand } from './carbohydrate.ts';
import { fatFloor, fatTarget } from './fat.ts';
import { type MarkInForce, markInForce } from './mark.ts';
import { proteinTargets } from './protein.ts';
import type { DayTargets } from './types.ts';

/** The records that targets follow from; a form shows targets for a draft of them. */
export interface PlanRecords {
  athlete: FieldsOf<'athlete'>;
  phases: readonly Phase[];
  calls: readonly WeeklyCallRecord[];
}

/** What a date asks for as a whole, in grams and kcal, whichever kind of day it is. */
export interface Asked {
  phase: Phase | null;
  bodyMassKg: number;
  protein: DayTargets['protein'];
  band: { lowG: number; highG: number };
  mark: MarkInForce;
  fat: Pick<DayTargets['fat'], 'targetG' | 'floorG' | 'floorRule'>;
  energyKcal: number;
}

/** The grams that a date asks for. They change only where a phase starts or a call was decided. */
export function askedOn(plan: PlanRecords, date: string): Asked {
  const { athlete, calls } = plan;
  const phase = phaseInForce(plan.phases, date);
  const bodyMassKg = bodyMassInForce(athlete.startMassKg, calls, date);
  const { quotaG } = proteinTargets(bodyMassKg, athlete.proteinGPerKg, athlete.meals);
  return askedAt(athlete, phase, bodyMassKg, markInForce(calls, phase, quotaG, date));
}

/**
 * What is asked at a body mass in kg and a mark: what a date will ask once a decision puts them in force. Protein and fat
 * follow body mass alone, so a move of the mark moves energy by its own grams and by nothing else.
 */
export function askedAt(
  athlete: FieldsOf<'athlete'>,
  phase: Phase | null,
  bodyMassKg: number,
  mark: MarkInForce,
): Asked {
  const protein = proteinTargets(bodyMassKg, athlete.proteinGPerKg, athlete.meals);
  const targetG = fatTarget(bodyMassKg, athlete.fatGPerKg);
  return {
    phase,
    bodyMassKg,
    protein,
    band: carbohydrateBand(protein.quotaG),
    mark,
    fat: { targetG, ...fatFloor(bodyMassKg, protein.quotaG, mark.markG) },
    energyKcal: energyKcal({ proteinG: protein.quotaG, carbohydrateG: mark.markG, fatG: targetG }),
  };
}
