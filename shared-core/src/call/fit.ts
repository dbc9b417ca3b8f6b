import { type BodyModel, fitModel } from '../maintenance/model.ts';
import { checkInput } from './check-input.ts';
import type { CallInput } from './input.ts';

/**
 * The model of an input's days, which takes nearly all the time of a call; null when there is no weigh-in. Throws a
 * RangeError for numbers that are none and days out of order.
 */
export function fitDays(input: CallInput): BodyModel | null {
  checkInput(input);
  if (!input.days.some((day) => day.weightKg !== null)) return null;
  return fitModel(input.athlete, input.days, input.targets, input);
}
