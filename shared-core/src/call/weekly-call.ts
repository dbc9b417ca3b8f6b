import type { BodyModel } from '../maintenance/model.ts';
import { estimate } from '../trend/estimate.ts';
import { z90 } from '../trend/normal.ts';
import { keptUnits, type Units } from '../units/reader.ts';
import { cautionsOf, cautionsOfMove } from './cautions.ts';
import { type Decision, decide, type Reason } from './decide.ts';
import { evidenceOf, waterChange } from './evidence.ts';
import { fitDays } from './fit.ts';
import { forecastBoth } from './forecast.ts';
import { FAST_LOSS, type Guards } from './guards.ts';
import type { CallInput } from './input.ts';
import { nextLevers } from './levers.ts';
import { type Missing, missingBesideOdd, missingFor } from './not-enough.ts';
import type { EvidenceCode, Pace, Verdict, WeeklyCall } from './output.ts';
import { assess, type Situation } from './situation.ts';
import { summaryOf } from './summary.ts';
import { type Say, sayIn } from './texts.ts';
import { wouldChangeOf } from './would-change.ts';

/**
 * The weekly call on the carbohydrate mark. Grams a day, % of body mass a week, kcal a day; its texts speak in `units`. `model`
 * is the fit of the input's days, where it is there already.
 * Throws a RangeError when a number is none or days are out of order; too little data is an answer ('not-enough'), not an
 * error.
 * Method: docs/method.md.
 */
export function weeklyCall(
  input: CallInput,
  units: Units = keptUnits,
  model: BodyModel | null = fitDays(input),
): WeeklyCall {
  if (model === null) return withoutWeighIns(input, missingFor(input));
  const missing = missingFor(input) ?? missingBesideOdd(input, model);
  const situation = assess(input, model);
  const say = sayIn(units);
  if (missing) return notEnough(situation, missing, say);
  const cautions = cautionsOf(situation, say);
  const slow = slowed(situation);
  const free = decide(situation.markG, situation.dose, slow, situation.recent);
  const stop = cautions.some((caution) => caution.level === 'stop');
  const decision = held(situation, free, stop);
  return {
    ...core(situation, decision, say),
    summary: summaryOf(situation, decision, stop, say),
    wouldChange: wouldChangeOf(situation, decision, slow, say),
    cautions: [...cautions, ...cautionsOfMove(situation, decision, say)],
    nextLevers: stop ? [] : nextLevers(situation, decision, say),
  };
}

/** Waist or lifts that speak against the pace move the aim to the slow end of the band. */
function slowed({ guards, composition, pacePercent }: Situation): Guards {
  const { low, high } = guards.band;
  if (composition.waistAhead) return { ...guards, aim: low };
  const tooFast = guards.aim < 0 && pacePercent.mean + z90 * pacePercent.sd < FAST_LOSS;
  return composition.probablyMuscle || tooFast ? { ...guards, aim: high } : guards;
}

/** The mark is not to be judged by a plan that was not eaten, unless it has long been eaten like that. */
function shouldEatFirst({ eating, written, guards, markG }: Situation, free: Decision): boolean {
  if (!eating.offPlan || eating.habitual || free.markG === markG) return false;
  if (eating.farOff) return true;
  const direction = Math.sign(free.markG - markG);
  const makesUp = direction === Math.sign(1 - eating.ratio);
  return makesUp || written.chancesAt(markG, guards.band).inside >= 0.5;
}

function held(situation: Situation, free: Decision, stop: boolean): Decision {
  const { markG } = situation;
  const hold = (reason: Reason): Decision => ({ ...free, markG, reason });
  if (free.reason === 'guard') return free;
  if (stop && free.markG < markG) return hold('stop');
  if (shouldEatFirst(situation, free)) return hold('eat-first');
  if (situation.composition.probablyMuscle && free.markG < markG) return hold('muscle');
  return free;
}

function core(
  situation: Situation,
  decision: Decision,
  say: Say,
): Omit<WeeklyCall, 'summary' | 'wouldChange' | 'cautions' | 'nextLevers'> {
  const { input, model, markG, dose, habit } = situation;
  const verdict: Verdict = decision.markG > markG ? 'up' : decision.markG < markG ? 'down' : 'hold';
  const maintenance = model.maintenanceKcal;
  return {
    day: input.days.at(-1)?.day ?? '',
    verdict,
    carbohydrateG: decision.markG,
    markInForceG: markG,
    pace: paceOf(situation),
    maintenanceKcal: estimate(maintenance.mean, maintenance.sd),
    evidence: evidenceOf(situation, say),
    forecast: forecastBoth(model, dose, habit, decision.markG, markG),
  };
}

function paceOf({ pace, pacePercent, dose, markG, input, model, guards }: Situation): Pace {
  const expected = dose.paceAt(markG);
  const { band } = guards;
  const chances = dose.chancesAt(markG, band);
  const water = waterChange(model.table.knownWaterKg, model.smoothed.response);
  return {
    meanPercentPerWeek: pacePercent.mean,
    interval90: {
      low: pacePercent.mean - z90 * pacePercent.sd,
      high: pacePercent.mean + z90 * pacePercent.sd,
    },
    meanKgPerWeek: pace.mean,
    expectedAtMark: estimate(expected.mean, expected.sd),
    band: { ...band },
    aimPercentPerWeek: input.aim.pacePercentPerWeek,
    probabilityBelow: chances.below,
    probabilityInside: chances.inside,
    probabilityAbove: chances.above,
    waterKg: estimate(water.mean, water.sd),
  };
}

/** What can be said of days that are too few for a call: what there was of them. */
const COUNTED: readonly EvidenceCode[] = ['weigh-ins', 'odd-weigh-ins', 'log', 'earlier-call'];

function notEnough(situation: Situation, missing: Missing, say: Say): WeeklyCall {
  const { markG } = situation;
  const hold: Decision = { markG, insideNow: 0, reason: 'not-worth-it' };
  const all = core(situation, hold, say);
  return {
    ...all,
    verdict: 'not-enough',
    evidence: all.evidence.filter(({ code }) => COUNTED.includes(code)),
    summary: [missing.text, `The mark stays at ${Math.round(markG)} g until there is more to go by.`],
    wouldChange: missing.wouldChange,
    cautions: cautionsOf(situation, say),
    nextLevers: [],
  };
}

function withoutWeighIns(input: CallInput, missing: Missing | null): WeeklyCall {
  const { targets } = input;
  return {
    day: input.days.at(-1)?.day ?? '',
    verdict: 'not-enough',
    carbohydrateG: targets.carbohydrateG,
    markInForceG: targets.carbohydrateG,
    pace: null,
    maintenanceKcal: null,
    evidence: [],
    summary: [
      missing?.text ?? 'There is no weigh-in yet.',
      `The mark stays at ${Math.round(targets.carbohydrateG)} g until there is more to go by.`,
    ],
    forecast: null,
    wouldChange: missing?.wouldChange ?? [],
    cautions: [],
    nextLevers: [],
  };
}
