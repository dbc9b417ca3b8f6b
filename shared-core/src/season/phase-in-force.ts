import type { Aim } from '../call/input.ts';
import type { PhaseAim } from '../records/athlete.ts';
import type { Phase } from '../records/kinds.ts';
import { latestOn } from './latest.ts';

/** Pace and its band in % of body mass a week, signed. */
interface DefaultPace {
  pacePercentPerWeek: number;
  bandLow: number;
  bandHigh: number;
}

/**
 * Pace to start a phase with. Off-season: about 2 lb a month is 0.26 % a week at 180 lb (common practice, no source) and
 * the low end of 0.25 to 0.5 % (Iraki et al. 2019). Pre-contest: inside 0.5 to 1 % a week (Helms et al. 2014). The half
 * width of the bands is what daily weigh-ins of four weeks can tell: ± 0.15 % (from the day-to-day variation of
 * Cheuvront et al. 2004); a loss gets ± 0.2 %, because it runs faster and shorter.
 */
export const defaultPaces: Record<PhaseAim, DefaultPace> = {
  'off-season': { pacePercentPerWeek: 0.25, bandLow: 0.1, bandHigh: 0.4 },
  hold: { pacePercentPerWeek: 0, bandLow: -0.15, bandHigh: 0.15 },
  'pre-contest': { pacePercentPerWeek: -0.7, bandLow: -0.9, bandHigh: -0.5 },
};

/** The phase with the latest start on or before a date; null when none has started. */
export function phaseInForce(phases: readonly Phase[], date: string): Phase | null {
  return latestOn(phases, (phase) => phase.from, date);
}

/** What body mass should do in a phase; before the first phase it should hold. */
export function aimOf(phase: Omit<Phase, 'id' | 'athlete'> | null): Aim {
  if (phase === null) {
    const { pacePercentPerWeek, bandLow, bandHigh } = defaultPaces.hold;
    return { phase: 'hold', pacePercentPerWeek, band: { low: bandLow, high: bandHigh } };
  }
  return {
    phase: phase.aim,
    pacePercentPerWeek: phase.pacePercentPerWeek,
    band: { low: phase.bandLow, high: phase.bandHigh },
    since: phase.from,
  };
}
