import { formatGrams } from '../units/mass.ts';
import { formatEstimatedPace, formatPace } from '../units/percent.ts';
import type { Decision } from './decide.ts';
import type { WouldChange } from './output.ts';
import type { Situation } from './situation.ts';
import type { Say } from './texts.ts';

/** What would have made the call another one, with the numbers at which it turns. */
export function wouldChangeOf(
  situation: Situation,
  decision: Decision,
  eatFirst: boolean,
  say: Say,
): WouldChange[] {
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
      text: `Two weeks eaten within 5 % of the plan of ${say.energy(eating.plannedKcal)}.`,
      numbers: { plannedKcal: eating.plannedKcal, loggedKcal: eating.loggedKcal },
    });
  items.push({
    code: 'pace',
    text: moved
      ? `An expected pace inside ${formatPace(guards.band.low)} to ${formatPace(guards.band.high)} a week at ${formatGrams(markG)}; it is ${formatEstimatedPace(expected)}.`
      : `An expected pace at ${formatGrams(markG)} clearly under ${formatPace(guards.band.low)} or over ${formatPace(guards.band.high)} a week; it is ${formatEstimatedPace(expected)}.`,
    numbers: { expectedPercentPerWeek: expected, low: guards.band.low, high: guards.band.high },
  });
  items.push({
    code: 'maintenance',
    text: `Maintenance ${moved ? 'between' : 'outside'} ${say.energy(lowKcal)} ${moved ? 'and' : 'to'} ${say.energy(highKcal)}; it is ${say.energy(maintenance)}.`,
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
      text: `A lower floor; the mark cannot go under ${formatGrams(guards.floorG)}.`,
      numbers: { floorG: guards.floorG },
    });
  if (composition.waistAhead)
    items.push({ code: 'waist', text: 'A waist that grows no faster than the pace explains.', numbers: {} });
  if (composition.probablyMuscle)
    items.push({ code: 'lifts', text: 'Key lifts that hold, or a waist that shrinks.', numbers: {} });
  return items;
}
