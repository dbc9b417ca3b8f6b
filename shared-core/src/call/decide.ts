import type { Dose } from './dose.ts';
import type { Guards } from './guards.ts';

/** What the rule has to know of the calls before. */
export interface Recent {
  /** Days since the mark last moved, Infinity when never. */
  daysSinceMove: number;
  /** Sign of the last move, 0 when none. */
  lastDirection: number;
  /** Pace of the last seven days, % a week. */
  lastWeek: number;
}

export type Reason =
  | 'worth-it'
  | 'guard'
  | 'not-worth-it'
  | 'too-soon'
  | 'at-floor'
  | 'at-ceiling'
  | 'small'
  /** Held by what a dose does not know: the plan was not eaten, lifts fall, a person should be seen. */
  | 'eat-first'
  | 'muscle'
  | 'stop';

export interface Decision {
  /** The mark to propose, whole fives; the mark in force when the call holds. */
  markG: number;
  /** Chance that the mark in force lies in band. */
  insideNow: number;
  reason: Reason;
}

/** A change must raise the chance to be in band by so much: its cost in the same coin (common practice, no source; set on virtual athletes). */
const COST = { change: 0.065, reversal: 0.08 };
/**
 * How much the two weeks that one on a mark completes count beside the weeks to come. More brings the pace into the band sooner
 * and the mark off the right one, to make up for the luck of a week (common practice, no source; set on virtual athletes).
 */
const LAST_WEEK_COUNTS = 0.25;
/** Days after a move in which the other direction costs extra (common practice, no source). */
const REVERSAL_DAYS = 35;
/** Inside a week only what was clearly wrong is moved again: chance to be in band (common practice, no source). */
const CLEARLY_WRONG = 0.1;
/** A smaller move is none (common practice, no source). */
export const SMALLEST_G = 10;

/** A mark may lie so far from the one whose mean pace is the aim, when that makes the band likelier (common practice, no source). */
const MOST_BESIDE_G = 60;

/** Chooses the mark: the one that is worth most, when it is worth a change. */
export function decide(markG: number, dose: Dose, guards: Guards, recent: Recent): Decision {
  const wanted = dose.markFor(guards.aim);
  const bounded = Math.min(guards.ceilingG, Math.max(guards.floorG, wanted));
  const reachable = Math.min(markG + guards.stepG, Math.max(markG - guards.stepG, bounded));
  const worth = worthOf(dose, guards, recent);
  const bestG = likeliest(Math.round(reachable / 5) * 5, markG, worth, guards);
  const underGuard = markG < guards.availabilityFloorG;
  const insideNow = dose.chancesAt(markG, guards.band).inside;
  if (underGuard && bestG - markG >= SMALLEST_G) return { markG: bestG, insideNow, reason: 'guard' };
  const hold = (reason: Decision['reason']): Decision => ({ markG, insideNow, reason });
  const smallUp = bestG - markG < SMALLEST_G;
  const smallDown = markG - bestG < SMALLEST_G;
  if (smallDown && wanted <= guards.floorG - SMALLEST_G && markG <= guards.floorG + SMALLEST_G)
    return hold('at-floor');
  if (smallUp && wanted > guards.ceilingG && markG >= guards.ceilingG - SMALLEST_G) return hold('at-ceiling');
  if (smallUp && smallDown) return hold('small');
  if (recent.daysSinceMove < 7 && insideNow > CLEARLY_WRONG) return hold('too-soon');
  const reversal =
    recent.lastDirection !== 0 &&
    Math.sign(bestG - markG) !== recent.lastDirection &&
    recent.daysSinceMove < REVERSAL_DAYS;
  const cost = COST.change + (reversal ? COST.reversal : 0);
  const nearer = worth(bestG) < 0.5 ? towardAim(markG, bestG, dose, guards) : 0;
  if (Math.max(worth(bestG) - worth(markG), nearer) < cost) return hold('not-worth-it');
  return { markG: bestG, insideNow, reason: 'worth-it' };
}

/**
 * What a mark is worth: its chance to be in the part of the band around the aim, mostly in the weeks to come and a little with the
 * week that was.
 */
function worthOf(dose: Dose, guards: Guards, { lastWeek }: Recent): (g: number) => number {
  const band = aroundAim(guards);
  return (g) => {
    const ahead = dose.chancesAt(g, band).inside;
    const together = dose.chancesAt(g, band, lastWeek).inside;
    return (ahead + LAST_WEEK_COUNTS * together) / (1 + LAST_WEEK_COUNTS);
  };
}

/** The whole band when the aim is its middle; an aim near one end keeps to that end. */
function aroundAim({ aim, band: { low, high } }: Guards): Guards['band'] {
  const half = (high - low) / 2;
  return { low: Math.max(low, aim - half), high: Math.min(high, aim + half) };
}

/** The mark worth most near `fromG`, as close to it as any that is worth as much. */
function likeliest(fromG: number, markG: number, worth: (g: number) => number, guards: Guards): number {
  const lowG = Math.max(guards.floorG, markG - guards.stepG);
  const highG = Math.min(guards.ceilingG, markG + guards.stepG);
  let bestG = fromG;
  let best = worth(fromG);
  for (let beside = 5; beside <= MOST_BESIDE_G; beside += 5)
    for (const g of [fromG - beside, fromG + beside]) {
      if (g < lowG || g > highG) continue;
      const value = worth(g);
      if (value <= best) continue;
      best = value;
      bestG = g;
    }
  return bestG;
}

/** When neither mark is likely in band, coming nearer counts too: as far as the mean pace moves toward the band. */
function towardAim(markG: number, bestG: number, dose: Dose, guards: Guards): number {
  const width = guards.band.high - guards.band.low;
  const miss = (g: number) => {
    const { mean } = dose.paceAt(g);
    return Math.max(0, guards.band.low - mean, mean - guards.band.high);
  };
  return Math.min(1, (miss(markG) - miss(bestG)) / width);
}
