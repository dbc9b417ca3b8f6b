import { type DayTable, has } from '../maintenance/day-table.ts';
import { availabilityLevels } from '../maintenance/energy-availability.ts';
import { formatGrams } from '../units/mass.ts';
import { formatEstimatedPace, formatPace, formatShare, paceStep } from '../units/percent.ts';
import { type Decision, decide } from './decide.ts';
import type { Dose } from './dose.ts';
import type { Guards } from './guards.ts';
import type { WouldChange } from './output.ts';
import { OFF_PLAN, type Situation } from './situation.ts';
import { days, type Say } from './texts.ts';

/** What would have made the call another one, with the numbers at which it turns; `guards` are those it was decided by. */
export function wouldChangeOf(
  situation: Situation,
  decision: Decision,
  guards: Guards,
  say: Say,
): WouldChange[] {
  return [
    ...heldBy(situation, decision, say),
    ...turning(situation, decision, guards, say),
    ...moreData(situation),
    ...body(situation),
  ];
}

/** What stood in the way of a move, or forced it. */
function heldBy({ eating, guards, recent }: Situation, { reason }: Decision, say: Say): WouldChange[] {
  switch (reason) {
    case 'eat-first':
      return [
        {
          code: 'eat-the-plan',
          text: `Two weeks eaten within ${formatShare(OFF_PLAN)} of the plan of ${say.energy(eating.plannedKcal)}.`,
          numbers: { plannedKcal: eating.plannedKcal, loggedKcal: eating.loggedKcal },
        },
      ];
    case 'guard':
      return [
        {
          code: 'energy-availability',
          text: `A plan that leaves ${say.available(availabilityLevels.low)} of fat-free mass a day or more; it leaves ${say.available(guards.availability)}.`,
          numbers: { kcalPerKg: guards.availability, guardKcalPerKg: availabilityLevels.low },
        },
      ];
    case 'stop':
      return [
        {
          code: 'doctor',
          text: 'The word of a doctor who has seen these numbers; you can then set another mark.',
          numbers: {},
        },
      ];
    case 'too-soon':
      return [
        {
          code: 'wait',
          text: `A week since the last change; it was ${days(recent.daysSinceMove)} ago.`,
          numbers: { daysSinceMove: recent.daysSinceMove },
        },
      ];
    case 'at-floor':
      return [
        {
          code: 'floor',
          text: `A lower floor; the mark cannot go under ${formatGrams(guards.floorG)}.`,
          numbers: { floorG: guards.floorG },
        },
      ];
    default:
      return [];
  }
}

/** Maintenance further off than this is another body, kcal/d, and how finely its turning point is sought (common practice, no source). */
const FARTHEST_KCAL = 640;
const FINEST_KCAL = 20;

/** Where the decision turns when maintenance, and with it the pace at the mark, is another one. */
function turning(situation: Situation, decision: Decision, guards: Guards, say: Say): WouldChange[] {
  if (['eat-first', 'guard', 'stop', 'muscle'].includes(decision.reason)) return [];
  const { dose, markG, recent, model } = situation;
  const perGram = dose.energyAt(1) - dose.energyAt(0);
  const verdict = Math.sign(decision.markG - markG);
  const turns = (moreKcal: number) =>
    Math.sign(decide(markG, shifted(dose, moreKcal / perGram), guards, recent).markG - markG) !== verdict;
  const maintenance = model.maintenanceKcal.mean;
  const expected = dose.paceAt(markG).mean;
  // A mark that goes up for a pace too slow holds when maintenance is lower, and the other way round.
  const found = (verdict === 0 ? [-1, 1] : [-verdict]).flatMap((side) => {
    const moreKcal = side * nearestTurn((kcal) => turns(side * kcal));
    if (Number.isNaN(moreKcal)) return [];
    const pace = dose.paceAt(markG - moreKcal / perGram).mean;
    return [{ kcal: maintenance + moreKcal, pace, over: side > 0 }];
  });
  if (found.length === 0) return [];
  const kcal = found.map((turn) => `${say.energy(turn.kcal)} or ${turn.over ? 'more' : 'less'}`);
  // Rounded away from the expected one: what is said then turns the call for sure, and is never that one itself.
  const steps = Math.round(expected / paceStep);
  const beyond = (pace: number, over: boolean) =>
    paceStep *
    (over
      ? Math.min(steps - 1, Math.floor(pace / paceStep))
      : Math.max(steps + 1, Math.ceil(pace / paceStep)));
  const pace = found.map(
    (turn) => `${formatPace(beyond(turn.pace, turn.over))} or ${turn.over ? 'less' : 'more'}`,
  );
  const numbers = (of: (turn: (typeof found)[number]) => number) =>
    Object.fromEntries(found.map((turn) => [turn.over ? 'upper' : 'lower', of(turn)]));
  return [
    {
      code: 'pace',
      text: `An expected pace at ${formatGrams(markG)} of ${pace.join(', or of ')} a week; it is ${formatEstimatedPace(expected)}.`,
      numbers: { expectedPercentPerWeek: expected, ...numbers((turn) => turn.pace) },
    },
    {
      code: 'maintenance',
      text: `Maintenance of ${kcal.join(', or of ')} a day; it is ${say.energy(maintenance)}.`,
      numbers: { maintenanceKcal: maintenance, ...numbers((turn) => turn.kcal) },
    },
  ];
}

/** The same dose for a body whose maintenance is higher by what so many grams bring. */
function shifted(dose: Dose, grams: number): Dose {
  return {
    energyAt: dose.energyAt,
    paceAt: (markG) => dose.paceAt(markG - grams),
    markFor: (pace) => dose.markFor(pace) + grams,
    chancesAt: (markG, band, lastWeek) => dose.chancesAt(markG - grams, band, lastWeek),
  };
}

/** The smallest distance, kcal, at which the decision turns; NaN when it does not. */
function nearestTurn(turns: (kcal: number) => boolean): number {
  if (!turns(FARTHEST_KCAL)) return Number.NaN;
  let same = 0;
  let other = FARTHEST_KCAL;
  while (other - same > FINEST_KCAL) {
    const middle = (same + other) / 2;
    if (turns(middle)) other = middle;
    else same = middle;
  }
  return other;
}

/** With fewer of the last 14 days weighed or logged, more of them are asked for (common practice, no source). */
const FEW_DAYS = 10;

function moreData({ weighInsLately, eating, model }: Situation): WouldChange[] {
  const items: WouldChange[] = [];
  if (weighInsLately < FEW_DAYS)
    items.push({
      code: 'more-weigh-ins',
      text: `More weigh-ins: ${weighInsLately} in the last 14 days leave a wide interval.`,
      numbers: { weighIns: weighInsLately },
    });
  if (eating.loggedDays < FEW_DAYS)
    items.push({
      code: 'more-log',
      text: `More days logged in full: ${eating.loggedDays} in the last 14.${ofSmallDays(model.table)}`,
      numbers: { loggedDays: eating.loggedDays },
    });
  return items;
}

/** A plan that asks for far too much makes every whole log look half: only the athlete can tell. */
function ofSmallDays({ partial, everyMealKcal, count }: DayTable): string {
  const small = partial.slice(-14).filter((one, n) => one && has(everyMealKcal, Math.max(0, count - 14) + n));
  if (small.length === 0) return '';
  return ` ${days(small.length)} with nearly every meal in the log ${small.length === 1 ? 'looks' : 'look'} too small to be all: if it was, say so on that day’s page.`;
}

function body({ composition }: Situation): WouldChange[] {
  const items: WouldChange[] = [];
  if (composition.waistAhead)
    items.push({ code: 'waist', text: 'A waist that grows no faster than the pace explains.', numbers: {} });
  if (composition.probablyMuscle)
    items.push({ code: 'lifts', text: 'Key lifts that hold, or a waist that shrinks.', numbers: {} });
  return items;
}
