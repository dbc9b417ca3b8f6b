import { availabilityLevels } from '../maintenance/energy-availability.ts';
import { dayNumber } from '../units/day-number.ts';
import { formatSigned } from '../units/decimal.ts';
import { formatGrams } from '../units/mass.ts';
import { formatEstimatedPace, formatPace, formatShare } from '../units/percent.ts';
import type { Decision } from './decide.ts';
import { FAST_LOSS } from './guards.ts';
import type { Caution } from './output.ts';
import type { Situation } from './situation.ts';
import { range, type Say } from './texts.ts';

/** Where a step is called large, and energy availability low enough to warn of it (common practice, no source). */
const LARGE_STEP_G = 75;
const WARN_AVAILABILITY = 35;

const SEE = 'Please see a doctor before going on; a dietitian can help with the plan.';

/** What to read before accepting; a caution of level stop means that nothing is moved down. */
export function cautionsOf(situation: Situation, say: Say): Caution[] {
  return [...stops(situation, say), ...warnings(situation, say)];
}

/** Lowest body fat that is held to be safe, %: Turocy PS et al. J Athl Train 2011;46:322–336 (from memory). */
const LEAST_FAT_PERCENT = { male: 5, female: 12 };
/** Under this age a loss is no plan for a program (common practice, no source); a birth year can't tell whether the birthday has been, so 18 itself is warned. */
export const GROWN_AGE = 18;
/** Maintenance known no better than this rests on the start estimate (common practice, no source). */
const FORMULA_SHARE = 0.06;

function stops({ health, pacePercent, input }: Situation, say: Say): Caution[] {
  const found: Caution[] = [];
  const losing = input.aim.pacePercentPerWeek < 0;
  const { ageYears, stated = [] } = input.athlete;
  const add = (code: Caution['code'], text: string, numbers: Record<string, number>) =>
    found.push({ code, level: 'stop', text: `${text} ${SEE}`, numbers });
  if (health.veryFastLoss)
    add(
      'fast-loss',
      `Body mass changes by ${formatEstimatedPace(pacePercent.mean)} a week, faster than any plan should.`,
      {
        percentPerWeek: pacePercent.mean,
      },
    );
  if (health.unexplainedLoss)
    add('unexplained-loss', 'Body mass falls although the log says that enough is eaten.', {
      percentPerWeek: pacePercent.mean,
    });
  if (health.veryLowIntake)
    add(
      'very-low-intake',
      `The log shows ${say.available(health.eatenPerFatFreeKg)} of fat-free mass a day for two weeks, far under ${say.available(availabilityLevels.low)}. If that is not all that was eaten, log the rest.`,
      { kcalPerKg: health.eatenPerFatFreeKg },
    );
  if (health.veryLowMass)
    add('low-body-mass', `Body mass is low for your height (index ${health.bodyMassIndex.toFixed(1)}).`, {
      bodyMassIndex: health.bodyMassIndex,
    });
  if (ageYears < GROWN_AGE && losing)
    add(
      'under-age',
      'Under 18 a loss is planned with a professional who knows you: someone who grows needs more than these rules know.',
      { ageYears },
    );
  // Body mass that is to come with a child is no pace too fast.
  if (stated.includes('pregnancy'))
    add('pregnancy', 'In pregnancy and while breast-feeding no call moves the mark down.', {});
  if (losing && stated.includes('eating-disorder'))
    add(
      'eating-disorder',
      'With an eating disorder, now or before, no call moves the mark down for a loss.',
      {},
    );
  return found;
}

function warnings(situation: Situation, say: Say): Caution[] {
  const { guards, input, composition, pacePercent, health } = situation;
  const { targets } = input;
  const available = `${say.available(guards.availability)} of fat-free mass`;
  const found: Caution[] = [];
  if (guards.availability < availabilityLevels.low)
    found.push({
      code: 'energy-availability-guard',
      level: 'warn',
      text: `The plan leaves ${available} a day, under the guard of ${say.available(availabilityLevels.low)}. The call goes up to it, step by step, and never lower.`,
      numbers: { kcalPerKg: guards.availability },
    });
  else if (guards.availability < availabilityLevels.healthy)
    found.push({
      code: 'energy-availability-low',
      level: guards.availability < WARN_AVAILABILITY ? 'warn' : 'note',
      text: `The plan leaves ${available} a day; from ${say.available(availabilityLevels.healthy)} down, watch sleep, mood, training and cycle.`,
      numbers: { kcalPerKg: guards.availability },
    });
  if (health.lowMass && !health.veryLowMass && input.aim.pacePercentPerWeek <= 0)
    found.push({
      code: 'low-body-mass',
      level: 'warn',
      text: `Body mass is low for your height (index ${health.bodyMassIndex.toFixed(1)}; under 18.5 is underweight). ${SEE}`,
      numbers: { bodyMassIndex: health.bodyMassIndex },
    });
  found.push(...young(situation), ...lean(situation), ...heldBack(situation));
  if (targets.fatG < targets.fatFloorG)
    found.push({
      code: 'fat-floor',
      level: 'warn',
      text: `Fat of ${formatGrams(targets.fatG)} lies under its floor of ${formatGrams(targets.fatFloorG)}.`,
      numbers: { fatG: targets.fatG, floorG: targets.fatFloorG },
    });
  if (input.aim.phase === 'pre-contest' && pacePercent.mean < FAST_LOSS)
    found.push({
      code: 'probably-muscle',
      level: 'warn',
      text: `Pace is ${formatEstimatedPace(pacePercent.mean)} a week; beyond ${formatSigned(FAST_LOSS, 0)} % some of it is probably muscle.`,
      numbers: { percentPerWeek: pacePercent.mean },
    });
  else if (composition.probablyMuscle)
    found.push({
      code: 'probably-muscle',
      level: 'warn',
      text: 'Key lifts fall while the waist stands: what is lost is probably muscle.',
      numbers: { liftPercentPerWeek: composition.lifts?.percentPerWeek ?? 0 },
    });
  if (composition.waistAhead)
    found.push({
      code: 'waist-ahead-of-pace',
      level: 'note',
      text: 'The waist grows faster than the pace explains: more of the gain is fat than it need be.',
      numbers: { cmPerWeek: composition.waist?.cmPerWeek ?? 0 },
    });
  return found;
}

function young({ input }: Situation): Caution[] {
  const { ageYears } = input.athlete;
  if (ageYears > GROWN_AGE || (ageYears < GROWN_AGE && input.aim.pacePercentPerWeek < 0)) return [];
  const text =
    'Under 18 or just 18: these rules come from studies of adults. Let a doctor or dietitian see the plan.';
  return [{ code: 'under-age', level: 'warn', text, numbers: { ageYears } }];
}

function lean({ input }: Situation): Caution[] {
  const { sex, fatPercent = Number.NaN, newestFatPercent: percent = fatPercent } = input.athlete;
  const least = LEAST_FAT_PERCENT[sex];
  if (!(percent <= least) || input.aim.pacePercentPerWeek >= 0) return [];
  const text = `Body fat of ${formatShare(percent / 100)} is at or under the ${formatShare(least / 100)} that is held to be the least a body can spare. ${SEE}`;
  return [
    { code: 'low-body-fat', level: 'warn', text, numbers: { fatPercent: percent, leastPercent: least } },
  ];
}

function heldBack({ input, guards }: Situation): Caution[] {
  const aim = input.aim.pacePercentPerWeek;
  if (aim === guards.aim) return [];
  const text = `The aim of ${formatPace(aim)} a week is faster than a call will drive at: it goes by ${formatPace(guards.aim)} and a band of ${range(guards.band.low, guards.band.high, formatPace)}.`;
  return [
    {
      code: 'aim-held-back',
      level: 'warn',
      text,
      numbers: { aimPercentPerWeek: aim, drivenPercentPerWeek: guards.aim },
    },
  ];
}

/** Why a step may be as large as it is, as a clause; empty when the data ask for it. */
function whyLarge({ model, input, lastDay }: Situation): string {
  const { mean, sd } = model.maintenanceKcal;
  if (sd > FORMULA_SHARE * mean)
    return '; maintenance so far rests mostly on a formula, and days to come will correct it';
  const { since } = input.aim;
  return since !== undefined && lastDay - dayNumber(since) < 7 ? '; the aim is a new one' : '';
}

/** Cautions that follow from what is proposed. */
export function cautionsOfMove(situation: Situation, decision: Decision, say: Say): Caution[] {
  const { input, markG, guards } = situation;
  const found: Caution[] = [];
  const move = decision.markG - markG;
  if (Math.abs(move) >= LARGE_STEP_G)
    found.push({
      code: 'large-step',
      level: 'note',
      text: `A step of ${formatGrams(Math.abs(move))} (${say.energy(4 * Math.abs(move))} a day) is large${whyLarge(situation)}. Expect the scale to jump with water first.`,
      numbers: { grams: move },
    });
  if (
    decision.markG < input.targets.carbohydrateBand.lowG ||
    decision.markG > input.targets.carbohydrateBand.highG
  )
    found.push({
      code: 'mark-outside-band',
      level: 'note',
      text: `The mark lies outside the carbohydrate band of ${Math.round(input.targets.carbohydrateBand.lowG)} to ${formatGrams(input.targets.carbohydrateBand.highG)}, which is orientation only.`,
      numbers: { markG: decision.markG },
    });
  if (decision.markG <= guards.floorG)
    found.push({
      code: 'mark-at-floor',
      level: 'note',
      text: `The mark ${decision.markG < guards.floorG ? 'lies under' : 'stands at'} its own floor of ${formatGrams(guards.floorG)}.`,
      numbers: { floorG: guards.floorG },
    });
  return found;
}
