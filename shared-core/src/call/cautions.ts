import { availabilityLevels } from '../maintenance/energy-availability.ts';
import { formatGrams } from '../units/mass.ts';
import { formatPace } from '../units/percent.ts';
import type { Decision } from './decide.ts';
import type { Caution } from './output.ts';
import type { Situation } from './situation.ts';
import type { Say } from './texts.ts';

/** Where a step is called large (common practice, no source). */
const LARGE_STEP_G = 75;

const SEE = 'Please see a doctor before going on; a dietitian can help with the plan.';

/** What to read before accepting; a caution of level stop means that nothing is moved down. */
export function cautionsOf(situation: Situation, say: Say): Caution[] {
  return [...stops(situation, say), ...warnings(situation, say)];
}

function stops({ health, pacePercent, input }: Situation, say: Say): Caution[] {
  const found: Caution[] = [];
  const losing = input.aim.pacePercentPerWeek < 0;
  const add = (code: Caution['code'], text: string, numbers: Record<string, number>) =>
    found.push({ code, level: 'stop', text: `${text} ${SEE}`, numbers });
  if (health.veryFastLoss)
    add(
      'fast-loss',
      `Body mass falls by ${formatPace(pacePercent.mean)} a week, faster than any plan should.`,
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
      `The log shows ${say.available(health.loggedPerFatFreeKg)} of fat-free mass a day for two weeks, far under ${say.available(availabilityLevels.low)}.`,
      { kcalPerKg: health.loggedPerFatFreeKg },
    );
  if (health.veryLowMass && losing)
    add('low-body-mass', `Body mass is low for your height (index ${health.bodyMassIndex.toFixed(1)}).`, {
      bodyMassIndex: health.bodyMassIndex,
    });
  return found;
}

function warnings({ guards, input, composition, pacePercent, health }: Situation, say: Say): Caution[] {
  const { targets } = input;
  const available = `${say.available(guards.availability)} of fat-free mass`;
  const found: Caution[] = [];
  if (guards.availability < availabilityLevels.low)
    found.push({
      code: 'energy-availability-guard',
      level: 'warn',
      text: `The plan leaves ${available} a day, under the guard of ${say.available(availabilityLevels.low)}. The call will not go lower.`,
      numbers: { kcalPerKg: guards.availability },
    });
  else if (guards.availability < availabilityLevels.healthy)
    found.push({
      code: 'energy-availability-low',
      level: guards.availability < 35 ? 'warn' : 'note',
      text: `The plan leaves ${available} a day; from ${say.available(availabilityLevels.healthy)} down, watch sleep, mood, training and cycle.`,
      numbers: { kcalPerKg: guards.availability },
    });
  if (health.lowMass && !health.veryLowMass && input.aim.pacePercentPerWeek < 0)
    found.push({
      code: 'low-body-mass',
      level: 'warn',
      text: `Body mass is low for your height (index ${health.bodyMassIndex.toFixed(1)}; under 18.5 is underweight). ${SEE}`,
      numbers: { bodyMassIndex: health.bodyMassIndex },
    });
  if (targets.fatG < targets.fatFloorG)
    found.push({
      code: 'fat-floor',
      level: 'warn',
      text: `Fat of ${formatGrams(targets.fatG)} lies under its floor of ${formatGrams(targets.fatFloorG)}.`,
      numbers: { fatG: targets.fatG, floorG: targets.fatFloorG },
    });
  if (input.aim.phase === 'pre-contest' && pacePercent.mean < -1)
    found.push({
      code: 'probably-muscle',
      level: 'warn',
      text: `Pace is ${formatPace(pacePercent.mean)} a week; beyond −1 % some of it is probably muscle.`,
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

/** Cautions that follow from what is proposed. */
export function cautionsOfMove(situation: Situation, decision: Decision, say: Say): Caution[] {
  const { input, markG, guards } = situation;
  const found: Caution[] = [];
  const move = decision.markG - markG;
  if (Math.abs(move) >= LARGE_STEP_G)
    found.push({
      code: 'large-step',
      level: 'note',
      text: `A step of ${formatGrams(Math.abs(move))} (${say.energy(4 * Math.abs(move))} a day) is large; the start was far from maintenance. Expect the scale to jump with water first.`,
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
      text: `The mark stands at its own floor of ${formatGrams(guards.floorG)}.`,
      numbers: { floorG: guards.floorG },
    });
  return found;
}
