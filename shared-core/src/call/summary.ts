import { formatGrams } from '../units/mass.ts';
import { formatEstimatedPace, paceStep } from '../units/percent.ts';
import { roundTo } from '../units/round.ts';
import type { Decision } from './decide.ts';
import type { Situation } from './situation.ts';
import { days, type Say } from './texts.ts';

/** Two sentences that anyone understands: what the body does, and what to do. */
export function summaryOf(
  situation: Situation,
  decision: Decision,
  stop: boolean,
  say: Say,
): [string, string] {
  const { markG } = situation;
  const stays = stop && decision.markG === markG && decision.reason !== 'stop';
  const todo = stays ? `The mark stays at ${formatGrams(markG)}.` : whatToDo(situation, decision, say);
  return [whatHappens(situation), stop ? `${todo.slice(0, -1)}; ${SEE_FIRST}` : todo];
}

const SEE_FIRST = 'please talk to a doctor about these numbers first.';

function whatHappens({ dose, markG, guards }: Situation): string {
  const { mean } = dose.paceAt(markG);
  const { inside } = dose.chancesAt(markG, guards.band);
  const doing =
    Math.abs(mean) < 0.05
      ? 'hold steady'
      : `${mean > 0 ? 'gain' : 'lose'} about ${formatEstimatedPace(Math.abs(mean)).replace('+', '')} of body mass a week`;
  return `At ${formatGrams(markG)} of carbohydrate a day you would ${doing}, ${placeOf(mean, inside, guards.band)}.`;
}

/** Where a pace lies beside the band, % of body mass a week. */
function placeOf(mean: number, inside: number, band: { low: number; high: number }): string {
  const over = mean > band.high;
  const out = over || mean < band.low;
  if (inside >= 0.5 && !out) return 'which is inside your band';
  // The mean of two places may lie out of a band that one of them, the likelier, lies in.
  if (out && inside < 0.5) {
    if (band.low <= 0 && band.high >= 0) return 'where your band asks to hold';
    if (mean < 0 && band.low > 0) return 'where your band asks for a gain';
    if (mean > 0 && band.high < 0) return 'where your band asks for a loss';
    const just = roundTo(mean, paceStep) === roundTo(over ? band.high : band.low, paceStep) ? 'just ' : '';
    return `which is ${just}${over === band.low > 0 ? 'faster' : 'slower'} than your band`;
  }
  return 'which may lie in your band or outside it';
}

function whatToDo({ markG, eating, guards, recent }: Situation, decision: Decision, say: Say): string {
  if (decision.reason === 'guard')
    return `Raise the carbohydrate mark to ${formatGrams(decision.markG)} a day: the plan leaves too little energy for the body to run on.`;
  if (decision.markG !== markG) {
    const up = decision.markG > markG;
    const step = formatGrams(Math.abs(decision.markG - markG));
    const why = decision.insideNow >= 0.5 ? ', where your pace is likelier to stay in the band' : '';
    return `${up ? 'Raise' : 'Lower'} the carbohydrate mark by ${step} to ${formatGrams(decision.markG)} a day${why}.`;
  }
  switch (decision.reason) {
    case 'eat-first': {
      const off = eating.loggedKcal - eating.plannedKcal;
      const log = eating.farOff && off < 0 ? ', and log all of it' : '';
      return `Eat the plan first${log}: the log stands ${say.energy(Math.abs(off))} a day ${off < 0 ? 'under' : 'over'} it, so the mark stays at ${formatGrams(markG)}.`;
    }
    case 'stop':
      return `The mark stays at ${formatGrams(markG)} and does not go down.`;
    case 'muscle':
      return `Hold ${formatGrams(markG)}: key lifts fall while the waist stands, so nothing is made faster.`;
    case 'at-floor':
      return `The mark stays at ${formatGrams(markG)}, its floor is ${formatGrams(guards.floorG)}; pick one of the next levers instead.`;
    case 'at-ceiling':
      return `The mark stays at ${formatGrams(markG)}, its ceiling is ${formatGrams(guards.ceilingG)}.`;
    case 'too-soon':
      return `Hold ${formatGrams(markG)}: the last change is ${days(recent.daysSinceMove)} old and needs time to show.`;
    default:
      if (decision.insideNow >= 0.5) return `Hold ${formatGrams(markG)}: it does what it should.`;
      return decision.reason === 'small'
        ? `Hold ${formatGrams(markG)}: no other mark is likelier in your band.`
        : `Hold ${formatGrams(markG)}: the numbers are not clear enough to be worth a change.`;
  }
}
