import { at } from '../maintenance/at.ts';
import { FEW_LOGS } from '../maintenance/days.ts';
import { availabilityLevels } from '../maintenance/energy-availability.ts';
import { ODD, PART } from '../maintenance/filter.ts';
import { z90 } from '../trend/normal.ts';
import { formatSigned } from '../units/decimal.ts';
import { formatGrams } from '../units/mass.ts';
import { formatEstimatedPace, formatPace, formatShare } from '../units/percent.ts';
import type { EvidenceItem } from './output.ts';
import { shiftItems } from './shift-items.ts';
import type { Situation } from './situation.ts';
import { counted, days, range, type Say } from './texts.ts';

/** What the call had in hand, most important first. */
export function evidenceOf(situation: Situation, say: Say): EvidenceItem[] {
  return [
    paceItem(situation),
    lastWeekItem(situation),
    maintenanceItem(situation, say),
    waterItem(situation, say),
    weighInItem(situation, say),
    ...oddItems(situation),
    ...shiftItems(situation, say),
    logItem(situation),
    eatingItem(situation, say),
    ...stepItem(situation),
    ...waistItem(situation, say),
    ...liftItem(situation),
    ...earlierItem(situation),
    availabilityItem(situation, say),
    bandItem(situation),
  ];
}

function paceItem({ pacePercent, guards }: Situation): EvidenceItem {
  const low = pacePercent.mean - z90 * pacePercent.sd;
  const high = pacePercent.mean + z90 * pacePercent.sd;
  const { band } = guards;
  return {
    code: 'pace',
    text: `Pace of the last 14 days is ${formatEstimatedPace(pacePercent.mean)} a week (90 %: ${range(low, high, formatEstimatedPace)}); the band is ${range(band.low, band.high, formatPace)}.`,
    numbers: { meanPercentPerWeek: pacePercent.mean, low, high, bandLow: band.low, bandHigh: band.high },
    used: true,
    why: 'Weigh-ins and log together, water taken out.',
  };
}

function lastWeekItem({ recent }: Situation): EvidenceItem {
  return {
    code: 'last-week',
    text: `Pace of the last 7 days is ${formatEstimatedPace(recent.lastWeek)} a week.`,
    numbers: { meanPercentPerWeek: recent.lastWeek },
    used: true,
    why: 'It counts a little: the 14 days up to the next call should lie in the band too.',
  };
}

function maintenanceItem({ model }: Situation, say: Say): EvidenceItem {
  const { mean, sd } = model.maintenanceKcal;
  return {
    code: 'maintenance',
    text: `Maintenance is ${say.energy(mean)} a day (90 %: ${range(mean - z90 * sd, mean + z90 * sd, say.energy)}) in units of your own log.`,
    numbers: { mean, low: mean - z90 * sd, high: mean + z90 * sd },
    used: true,
    why: 'What you log and what your body mass does with it; a log that is always a little short cancels out.',
  };
}

function waterItem({ model }: Situation, say: Say): EvidenceItem {
  const water = waterChange(model.table.knownWaterKg, model.smoothed.response);
  return {
    code: 'water',
    text: `Of the scale's change in 14 days, ${say.massChange(water.mean)} is water that carbohydrate and salt bind, not tissue.`,
    numbers: { meanKg: water.mean, sdKg: water.sd },
    used: true,
    why: 'Taken out of the pace.',
  };
}

/** Water of carbohydrate and salt over the last 14 days, kg. */
export function waterChange(
  known: Float64Array,
  response: { mean: number; sd: number },
): { mean: number; sd: number } {
  const last = known.length - 1;
  const change = at(known, last) - at(known, Math.max(0, last - 14));
  return { mean: change * response.mean, sd: Math.abs(change) * response.sd };
}

function weighInItem({ model, weighInsLately }: Situation, say: Say): EvidenceItem {
  return {
    code: 'weigh-ins',
    text: `${counted(weighInsLately, 'weigh-in')} in the last 14 days, ${model.weighIns} in all; one reading is off by about ${say.mass(Math.hypot(model.noise.scaleSd, model.noise.waterSd))}.`,
    numbers: {
      lately: weighInsLately,
      all: model.weighIns,
      scaleSdKg: model.noise.scaleSd,
      waterSdKg: model.noise.waterSd,
    },
    used: true,
    why: 'Each counts by how much it can be trusted.',
  };
}

function oddItems({ model }: Situation): EvidenceItem[] {
  const { track, table } = model;
  let odd = 0;
  let part = 0;
  for (let row = Math.max(0, table.count - 14); row < table.count; row++) {
    if (track.weighIn[row] === ODD) odd++;
    if (track.weighIn[row] === PART) part++;
  }
  if (odd + part === 0) return [];
  return [
    {
      code: 'odd-weigh-ins',
      text: `${odd + part} of the last weigh-ins stood far from the line; ${odd} left out, ${part} counted in part.`,
      numbers: { leftOut: odd, inPart: part },
      used: part > 0,
      why: 'A single odd reading says little; several that agree are taken for a move of the scale.',
    },
  ];
}

function logItem({ eating, model }: Situation): EvidenceItem {
  const partial = model.table.partial.slice(-14).reduce((sum, one) => sum + one, 0);
  const rest =
    partial > 0
      ? ` ${days(partial)} logged in part ${partial === 1 ? 'was' : 'were'} not counted as eaten.`
      : '';
  const unlike = model.table.unlikePlan.slice(-28).reduce((sum, one) => sum + one, 0);
  const stretch =
    unlike > 0
      ? ` On ${days(unlike)} in a row without a log body mass moved by more than the plan explains: what was eaten then is taken as unknown.`
      : '';
  return {
    code: 'log',
    text: `${eating.loggedDays} of the last 14 days are logged in full.${rest}${stretch}`,
    numbers: { full: eating.loggedDays, partial },
    used: eating.loggedDays > 0,
    why:
      eating.loggedDays > 0
        ? 'Days without a full log are taken as eaten by the plan, with a wide margin.'
        : 'No full log; the plan is taken as eaten, with a wide margin.',
  };
}

/** A mean so near to the plan is on it, as a share (common practice, no source). */
const ON_PLAN = 0.01;

function eatingItem({ eating, habit }: Situation, say: Say): EvidenceItem {
  if (eating.loggedDays === 0)
    return {
      code: 'eating',
      text: 'What was eaten is not known for the last 14 days.',
      numbers: { habit: habit.mean },
      used: false,
      why: 'No full log.',
    };
  const off = eating.loggedKcal - eating.plannedKcal;
  const place =
    Math.abs(off) < ON_PLAN * eating.plannedKcal
      ? 'on the plan'
      : `${say.energy(Math.abs(off))} a day ${off < 0 ? 'under' : 'over'} the plan`;
  return {
    code: 'eating',
    text: `The log stands ${place} (${say.energy(eating.loggedKcal)} logged, ${say.energy(eating.plannedKcal)} planned).`,
    numbers: {
      loggedKcal: eating.loggedKcal,
      plannedKcal: eating.plannedKcal,
      ratio: eating.ratio,
      habit: habit.mean,
    },
    used: true,
    why:
      eating.loggedDays < FEW_LOGS
        ? 'Too few full logs to say how the plan is eaten.'
        : eating.offPlan
          ? eating.habitual
            ? 'It has been so all along, as a log that always errs; the call reckons with it.'
            : 'The mark cannot be judged by a plan that was not eaten.'
          : 'Close enough to the plan; the luck of single weeks is not chased.',
  };
}

/** A step of maintenance is spoken of when it is at least so likely and at most so many days old (common practice, no source). */
const STEP_SEEN = { chance: 0.5, days: 35 };

function stepItem({ model }: Situation): EvidenceItem[] {
  const { bank } = model.filter;
  let likely = 0;
  let day = 0;
  for (let k = 0; k < bank.used; k++) {
    const age = model.table.count - at(bank.stepDay, k);
    if (at(bank.stepDay, k) < 0 || age > STEP_SEEN.days) continue;
    likely += at(bank.weights, k);
    day += at(bank.weights, k) * age;
  }
  if (likely < STEP_SEEN.chance) return [];
  const ago = Math.round(day / likely);
  return [
    {
      code: 'maintenance-step',
      text: `Maintenance seems to have changed about ${days(ago)} ago (chance ${formatShare(likely)}).`,
      numbers: { probability: likely, daysAgo: ago },
      used: true,
      why: 'Older days then say less about maintenance now.',
    },
  ];
}

function waistItem({ composition }: Situation, say: Say): EvidenceItem[] {
  const { waist, waistAhead } = composition;
  if (waist === null) return [];
  return [
    {
      code: 'waist',
      text: `Waist ${say.tapeChange(waist.cmPerWeek)} a week over ${counted(waist.readings, 'reading')}.`,
      numbers: { cmPerWeek: waist.cmPerWeek, low: waist.low, high: waist.high },
      used: waistAhead,
      why: waistAhead
        ? 'It grows faster than the pace explains, so the call aims at the low half of the band.'
        : 'In keeping with the pace, so it does not change the call.',
    },
  ];
}

function liftItem({ composition }: Situation): EvidenceItem[] {
  const { lifts, probablyMuscle } = composition;
  if (lifts === null) return [];
  return [
    {
      code: 'lifts',
      text: `Over six weeks, rep max of ${counted(lifts.tracked, 'key lift')} ${formatSigned(lifts.percentPerWeek, 1)} % a week, ${lifts.falling} falling.`,
      numbers: { percentPerWeek: lifts.percentPerWeek, falling: lifts.falling, tracked: lifts.tracked },
      used: probablyMuscle,
      why: probablyMuscle
        ? 'Lifts fall while the waist stands: probably muscle, so the call aims at the slow half of the band.'
        : 'Nothing in it that speaks against the pace.',
    },
  ];
}

function earlierItem({ recent, input }: Situation): EvidenceItem[] {
  const last = input.calls.at(-1);
  if (last === undefined) return [];
  const moved = Number.isFinite(recent.daysSinceMove)
    ? `The mark last moved ${days(recent.daysSinceMove)} ago.`
    : 'The mark has not moved yet.';
  const declined = last.decision === 'declined' ? ' The last call was declined.' : '';
  return [
    {
      code: 'earlier-call',
      text: `${moved}${declined}`,
      numbers: Number.isFinite(recent.daysSinceMove)
        ? { daysSinceMove: recent.daysSinceMove, direction: recent.lastDirection }
        : {},
      used: true,
      why: 'A mark needs time to show, and turning back costs more than holding.',
    },
  ];
}

function availabilityItem({ guards }: Situation, say: Say): EvidenceItem {
  return {
    code: 'energy-availability',
    text: `On an average day the plan leaves ${say.available(guards.availability)} of fat-free mass; the guard is ${say.available(availabilityLevels.low)}.`,
    numbers: { kcalPerKg: guards.availability, floorMarkG: guards.availabilityFloorG },
    used: guards.availability < availabilityLevels.healthy,
    why:
      guards.availability < availabilityLevels.healthy
        ? `Under ${say.available(availabilityLevels.healthy)} is a zone of caution.`
        : 'No concern.',
  };
}

function bandItem({ markG, input, guards }: Situation): EvidenceItem {
  const { lowG, highG } = input.targets.carbohydrateBand;
  const place = markG < lowG ? 'under' : markG > highG ? 'over' : 'inside';
  return {
    code: 'band',
    text: `The mark of ${formatGrams(markG)} lies ${place} the carbohydrate band of ${Math.round(lowG)} to ${formatGrams(highG)}.`,
    numbers: { markG, lowG, highG, floorG: guards.floorG },
    used: false,
    why: 'The band is orientation; body mass decides.',
  };
}
