import { energyBalance } from '../body/energy-balance.ts';
import { leanShare } from '../body/lean-share.ts';
import { waistChange } from '../body/waist.ts';
import { bodyweightLine } from '../call/bodyweight-line.ts';
import type { CallDay, CallInput } from '../call/input.ts';
import type { Estimate, LinePoint } from '../call/output.ts';
import { energyKcal } from '../foods/atwater.ts';
import { startFatKg } from '../maintenance/start-estimate.ts';
import { daysBetween } from '../season/dates.ts';
import { z90 } from '../trend/reading.ts';
import { formatDecimal } from '../units/decimal.ts';
import type { LeanShareView } from './body-types.ts';

/** Windows in weeks, the one that tells most first. */
const WINDOWS = [12, 4] as const;
/** Half a year tells what maintenance was; more days only cost time. */
const DAYS_BEFORE = 182;

/** The lean part of the change of the last twelve weeks, or four; null while the change can't be told from none. */
export function leanShareOf(input: CallInput, line: readonly LinePoint[]): LeanShareView | null {
  for (const weeks of WINDOWS) {
    const view = overWindow(input, line, weeks);
    if (view !== null) return view;
  }
  return null;
}

function overWindow(input: CallInput, line: readonly LinePoint[], weeks: number): LeanShareView | null {
  const start = line.at(-1 - 7 * weeks);
  const end = line.at(-1);
  if (start === undefined || end === undefined) return null;
  const from = normal(start.tissueKg);
  const to = normal(end.tissueKg);
  const found = leanShare({
    weeks,
    fatKg: startFatKg(input.athlete, from.mean),
    tissueKg: { mean: to.mean - from.mean, sd: Math.hypot(from.sd, to.sd) },
    energyKcal: energyOver(input, start.day),
    waistCm: waistChange(
      input.waist.map(({ day, cm }) => ({ day: daysBetween(start.day, day), cm })),
      0,
      7 * weeks,
    ),
  });
  if (found.share === null) return null;
  const { mean, interval90 } = found.share;
  const percent = (share: number) => formatDecimal(100 * share);
  return {
    share: mean,
    interval90,
    words:
      `Of the change of the last ${weeks} weeks about ${percent(mean)} % was lean ` +
      `(90 % interval ${percent(interval90.low)} to ${percent(interval90.high)} %).`,
  };
}

function normal({ mean, interval90 }: Estimate): { mean: number; sd: number } {
  return { mean, sd: (interval90.high - interval90.low) / 2 / z90 };
}

/** Energy eaten less used since `from`, with maintenance as it was known then: later weighing may not be counted twice. */
function energyOver(input: CallInput, from: string): { mean: number; sd: number } | null {
  const before = input.days.filter(({ day }) => day <= from).slice(-DAYS_BEFORE);
  const known = bodyweightLine({ ...input, days: before }).at(-1);
  if (known === undefined) return null;
  const after = input.days.filter(({ day }) => day > from);
  return energyBalance(after.map(loggedKcal), normal(known.maintenanceKcal));
}

function loggedKcal({ intake }: CallDay): number | null {
  return intake?.complete ? energyKcal(intake) : null;
}
