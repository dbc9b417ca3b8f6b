import { checkInput } from './check-input.ts';
import { forecastAt } from './forecast.ts';
import type { CallInput } from './input.ts';
import type { ForecastFan } from './output.ts';
import { assess } from './situation.ts';

/**
 * Fits the model once and hands back the forecast at any mark (g a day), cheap enough to follow a slider. Null when there is no
 * weigh-in. Throws a RangeError like the call itself.
 */
export function whatIf(input: CallInput): ((markG: number) => ForecastFan) | null {
  checkInput(input);
  if (!input.days.some((day) => day.weightKg !== null)) return null;
  const { model, dose, habit } = assess(input);
  return (markG) => forecastAt(model, dose, habit, markG);
}
