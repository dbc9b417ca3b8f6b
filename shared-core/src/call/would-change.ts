import type { Decision } from './decide.ts';
import type { WouldChange } from './output.ts';
import type { Situation } from './situation.ts';
import { grams, kcal, percent } from './texts.ts';

/** What would have made the call another one, with the numbers at which it turns. */
export function wouldChangeOf(situation: Situation, decision: Decision, eatFirst: boolean): WouldChange[] {
  const { dose, guards, markG, eating, weighInsLately, model, recent, composition } = situation;
  const items: WouldChange[] = [];
  const moved = decision.markG !== markG;
  const expected = dose.paceAt(markG).mean;
  const maintenance = model.maintenanceKcal.mean;
  const energy = dose.energyAt(markG);
  const perPercent = (dose.energyAt(markG + 10) - energy) / (dose.paceAt(markG + 10).mean - expected);
  const lowKcal = energy - guards.band.high * perPercent;
  const highKcal = energy - guards.band.low * perPercent;
  if (eatFirst)
    items.push({
      code: 'eat-the-plan',
      text: `Two weeks eaten within 5 % of the plan of ${kcal(eating.plannedKcal)}.`,
      numbers: { plannedKcal: eating.plannedKcal, loggedKcal: eating.loggedKcal },
    });
  items.push({
    code: 'pace',
    text: moved
      ? `An expected pace inside ${percent(guards.band.low)} to ${percent(guards.band.high)} a week at ${grams(markG)}; it is ${percent(expected)}.`
      : `An expected pace at ${grams(markG)} clearly under ${percent(guards.band.low)} or over ${percent(guards.band.high)} a week; it is ${percent(expected)}.`,
    numbers: { expectedPercentPerWeek: expected, low: guards.band.low, high: guards.band.high },
  });
  items.push({
    code: 'maintenance',
    text: `Maintenance ${moved ? 'between' : 'outside'} ${kcal(lowKcal)} ${moved ? 'and' : 'to'} ${kcal(highKcal)}; it is ${kcal(maintenance)}.`,
    numbers: { lowKcal, highKcal, maintenanceKcal: maintenance },
  });
  if (weighInsLately < 10)
    items.push({
      code: 'more-weigh-ins',
      text: `More weigh-ins: ${weighInsLately} in the last 14 days leave a wide interval.`,
      numbers: { weighIns: weighInsLately },
    });
  if (eating.loggedDays < 10)
    items.push({
      code: 'more-log',
      text: `More days logged in full: ${eating.loggedDays} in the last 14.`,
      numbers: { loggedDays: eating.loggedDays },
    });
  if (decision.reason === 'too-soon')
    items.push({
      code: 'wait',
      text: `A week since the last change; it was ${recent.daysSinceMove} days ago.`,
      numbers: { daysSinceMove: recent.daysSinceMove },
    });
  if (decision.reason === 'at-floor')
    items.push({
      code: 'floor',
      text: `A lower floor; the mark cannot go under ${grams(guards.floorG)}.`,
      numbers: { floorG: guards.floorG },
    });
  if (composition.waistAhead)
    items.push({ code: 'waist', text: 'A waist that grows no faster than the pace explains.', numbers: {} });
  if (composition.probablyMuscle)
    items.push({ code: 'lifts', text: 'Key lifts that hold, or a waist that shrinks.', numbers: {} });
  return items;
}
