import type { BodyModel } from '../maintenance/model.ts';
import { forecastAt } from './forecast.ts';
import type { CallInput } from './input.ts';
import type { ForecastFan } from './output.ts';
import { assess } from './situation.ts';

/** How far from the mark in force a slider reaches, and how far its forecasts lie apart, g a day (common practice, no source). */
const REACH_G = 200;
const STEP_G = 50;

/**
 * Forecasts at marks around the one in force, lowest mark first, none under the mark's own floor unless it is in force
 * already; between two of them a straight line is right to what is shown. `model` is the fit of the same days.
 */
export function whatIf(input: CallInput, model: BodyModel): ForecastFan[] {
  const { dose, habit, markG, guards } = assess(input, model);
  const steps = Math.round(REACH_G / STEP_G);
  return Array.from({ length: 2 * steps + 1 }, (_, i) => markG + (i - steps) * STEP_G)
    .filter((grams) => grams >= Math.min(guards.floorG, markG))
    .map((grams) => forecastAt(model, dose, habit, grams));
}
